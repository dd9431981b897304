// Reads what peer.cpp prints and compares it with two public libraries. Tolerances are those that the headers
// core/moist_air.hpp and weather/sun.hpp state, or follow from a difference of constants named here.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const psychrolib = require('psychrolib');
const { getSpa } = require('nrel-spa');
psychrolib.SetUnitSystem(psychrolib.SI);

const worst = new Map();
function compare(name, ours, theirs, tolerance, where) {
  const off = Math.abs(ours - theirs);
  const w = worst.get(name) ?? { off: -1, tolerance, count: 0, wrong: 0, where: '' };
  w.count += 1;
  if (!(off <= tolerance)) w.wrong += 1;
  if (!(off <= w.off)) Object.assign(w, { off, where: `${where}: ours ${ours}, theirs ${theirs}` });
  worst.set(name, w);
}
const relative = (name, ours, theirs, share, where) => compare(name, ours / theirs, 1, share, where);

function air([t, humidity, pressure, reference, water, vapour, dew, ratio, density], line) {
  // The same equations: only rounding may part them.
  relative('saturation, reference form', reference, psychrolib.GetSatVapPres(t), 1e-8, line);
  // Theirs is over ice below 0, ours over liquid water: compared where both are over water.
  if (t > 0) relative('saturation, form of the inner loops', water, psychrolib.GetSatVapPres(t), 3e-4, line);
  // 3e-4 of the pressure is 0.005 K; theirs is found by iteration to 0.001 K.
  if (dew > 0.1) compare('dew point, K', dew, psychrolib.GetTDewPointFromVapPres(t, vapour), 0.007, line);
  relative('humidity ratio', ratio, psychrolib.GetHumRatioFromVapPres(vapour, pressure), 1e-6, line);
  // Gas constants of dry air 287.1 and 287.042 J/(kg K), of vapour 461.5 and 461.52: 2e-4.
  relative('density of air', density, psychrolib.GetMoistAirDensity(t, ratio, pressure), 3e-4, line);
}

// Refraction of the formula's own air, 1010 hPa and 10 degC, which is what the engine uses; 75 s between the
// clocks of the earth and of atoms is a forecast for 2031, worth less than 0.0001 deg.
const options = { pressure: 1010, temperature: 10, delta_t: 75 };

function sun([unix, latitude, longitude, elevation, azimuth], line) {
  const there = getSpa(new Date(unix * 1000), latitude, longitude, 0, options);
  const up = 90 - there.zenith;
  // Between the horizon and 3 deg below it the two fade refraction out differently; nothing shines then.
  if (up > -3 && up < 0) return;
  compare('elevation, deg', elevation, up, 0.02, line);
  const turned = ((azimuth - there.azimuth + 540) % 360) - 180;
  compare('azimuth, deg on the sky', turned * Math.cos((up * Math.PI) / 180), 0, 0.02, line);
}

function day([noon, latitude, longitude, rise, transit, set], line) {
  // The other side of the earth has its noon on another date: places whose whole day lies in one date.
  if (Math.abs(longitude) > 25 || Math.abs(latitude) > 60) return;
  const there = getSpa(new Date(noon * 1000), latitude, longitude, 0, options);
  const midnight = Math.floor(noon / 86400) * 86400;
  const minutes = (unix, hours) => (unix - midnight) / 60 - hours * 60;
  compare('sunrise, min', minutes(rise, there.sunrise), 0, 0.5, line);
  compare('noon, min', minutes(transit, there.solarNoon), 0, 0.5, line);
  compare('sunset, min', minutes(set, there.sunset), 0, 0.5, line);
}

const kinds = { air, sun, day };
for (const line of readFileSync(0, 'utf8').trim().split('\n')) {
  const [kind, ...numbers] = line.split(' ');
  kinds[kind](numbers.map(Number), line);
}

const expected = 10;
let failed = worst.size === expected ? 0 : 1;
for (const [name, w] of worst) {
  const verdict = w.wrong === 0 && w.count >= 20 ? 'ok' : 'WRONG';
  if (verdict !== 'ok') failed += 1;
  console.log(`${verdict}  ${name}: ${w.count} compared, ${w.wrong} beyond ${w.tolerance}; worst ${w.off} at ${w.where}`);
}
process.exit(failed === 0 ? 0 : 1);
