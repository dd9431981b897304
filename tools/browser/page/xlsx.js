// Sheets as a workbook (Office Open XML, ECMA-376, parts 1 and 2), in an archive (ZIP) that packs nothing.
//
// Every text is written as text: nothing in it is a formula or a link. The same sheets give the same bytes.

const escaped = (text) => String(text).replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "")
  .replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

// "A", "B", ... "Z", "AA".
const letters_of = (column) => (column < 26 ? "" : letters_of(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + column % 26);

function cell(value, row, column, look) {
  const where = `r="${letters_of(column)}${row}" s="${look}"`;
  if (typeof value === "number") return `<c ${where}><v>${value}</v></c>`;
  return value === null ? "" : `<c ${where} t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;
}

const looks = {plain: 0, note: 1, heading: 2};  // places in `styles`
const styles = '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">' +
  '<fonts count="3"><font><sz val="11"/><name val="Calibri"/></font><font><i/><sz val="11"/><name val="Calibri"/></font>' +
  '<font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill>' +
  '<fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders>' +
  '<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3">' +
  [0, 1, 2].map((font) => `<xf fontId="${font}" applyFont="1" xfId="0"/>`).join("") + "</cellXfs></styleSheet>";

function sheet_of({notes, columns, rows}) {
  const all = [...notes.map((note) => [[note], looks.note]), [columns, looks.heading], ...rows.map((row) => [row, looks.plain])];
  const above = notes.length + 1;  // rows that stay in sight
  const lines = all.map(([cells, look], i) => `<row r="${i + 1}">${cells.map((each, column) => cell(each, i + 1, column, look)).join("")}</row>`);
  return '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetViews><sheetView workbookViewId="0">' +
    `<pane xSplit="1" ySplit="${above}" topLeftCell="B${above + 1}" activePane="bottomRight" state="frozen"/></sheetView></sheetViews>` +
    `<cols><col min="1" max="${columns.length}" width="22" customWidth="1"/></cols><sheetData>${lines.join("")}</sheetData></worksheet>`;
}

const table = Uint32Array.from({length: 256}, (_, byte) => {
  for (let bit = 0; bit < 8; ++bit) byte = byte & 1 ? 0xedb88320 ^ (byte >>> 1) : byte >>> 1;
  return byte;
});
const crc_of = (bytes) => (bytes.reduce((crc, byte) => table[(crc ^ byte) & 255] ^ (crc >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

// @param layout [[bytes of the number, number]...], little-endian
function numbers(layout) {
  const out = new DataView(new ArrayBuffer(layout.reduce((sum, [size]) => sum + size, 0)));
  let at = 0;
  for (const [size, value] of layout) {
    if (size === 2) out.setUint16(at, value, true);
    else out.setUint32(at, value, true);
    at += size;
  }
  return new Uint8Array(out.buffer);
}

// An archive of stored files (PKWARE APPNOTE 6.3).
// @param files texts by name
function archive(files) {
  const out = [], directory = [];
  let at = 0;
  const put = (...parts) => parts.forEach((part) => {
    out.push(part);
    at += part.length;
  });
  for (const [name, text] of Object.entries(files)) {
    const bytes = new TextEncoder().encode(text), path = new TextEncoder().encode(name), begin = at;
    const first_day = (1 << 5) | 1;  // 1 January 1980: when it was made is not told
    const about = [[2, 20], [2, 0x800], [2, 0], [2, 0], [2, first_day], [4, crc_of(bytes)], [4, bytes.length], [4, bytes.length], [2, path.length]];
    put(numbers([[4, 0x04034b50], ...about, [2, 0]]), path, bytes);
    directory.push(numbers([[4, 0x02014b50], [2, 20], ...about, [2, 0], [2, 0], [2, 0], [2, 0], [4, 0], [4, begin]]), path);
  }
  const begin = at, count = Object.keys(files).length;
  put(...directory);
  put(numbers([[4, 0x06054b50], [2, 0], [2, 0], [2, count], [2, count], [4, at - begin], [4, begin], [2, 0]]));
  return new Blob(out);
}

// @param sheets [{name, notes, columns, rows}], as the engine gives them
// @return the workbook
export function workbook(sheets) {
  const package_ = "http://schemas.openxmlformats.org/package/2006", office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const kind = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const part = (id, type, target) => `<Relationship Id="${id}" Type="${office}/${type}" Target="${target}"/>`;
  const relationships = (all) => `<Relationships xmlns="${package_}/relationships">${all.join("")}</Relationships>`;
  const files = {
    "[Content_Types].xml": `<Types xmlns="${package_}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
      `<Override PartName="/xl/workbook.xml" ContentType="${kind}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${kind}.styles+xml"/>` +
      sheets.map((_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="${kind}.worksheet+xml"/>`).join("") + "</Types>",
    "_rels/.rels": relationships([part("r1", "officeDocument", "xl/workbook.xml")]),
    "xl/workbook.xml": `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${office}"><sheets>` +
      sheets.map((sheet, i) => `<sheet name="${escaped(sheet.name)}" sheetId="${i + 1}" r:id="r${i + 1}"/>`).join("") + "</sheets></workbook>",
    "xl/_rels/workbook.xml.rels": relationships([...sheets.map((_, i) => part(`r${i + 1}`, "worksheet", `worksheets/sheet${i + 1}.xml`)),
                                                 part("styles", "styles", "styles.xml")]),
    "xl/styles.xml": styles
  };
  sheets.forEach((sheet, i) => { files[`xl/worksheets/sheet${i + 1}.xml`] = sheet_of(sheet); });
  return archive(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${text}`])));
}
