// What is said of help: the statement leads, and what holds it back is nobody's knowledge but the user's.
#include <doctest/doctest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "bide/report/document/text.hpp"
#include "bide/report/html/page.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/odds/odds_page.hpp"
#include "bide/report/odds/odds_words.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;

namespace {

constexpr float beyond = std::numeric_limits<float>::infinity();

scenario::Rescue weibull() {
  scenario::Rescue rescue;
  rescue.kind = scenario::RescueKind::weibull;
  rescue.scale_h = 20;
  rescue.shape = 1;  // exponential: a tenth by -20 ln 0.9 = 2.1 h, nine tenths by 20 ln 10 = 46 h
  return rescue;
}

// Twenty futures within 120 h: in ten help comes at 30 h after 12 h held back, in five there is no weather it
// can work in, in five it comes at 18 h.
std::vector<study::Future> twenty(bool held) {
  std::vector<study::Future> out(20);
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i].able_h = out[i].alive_h = {beyond, beyond, beyond};
    out[i].rescue_h = 18;
    if (held && i < 10) out[i].rescue_h = 30, out[i].held_back_h = 12;
    if (held && i >= 15)
      out[i].rescue_h = beyond, out[i].held_back_h = 120, out[i].no_weather_for_help = true;
  }
  return out;
}

struct Said {
  std::string text, page;
  nlohmann::json help;
};

Said said(const scenario::Rescue& rescue, const std::vector<study::Future>& futures) {
  auto scenario = test::valid_scenario(2);
  scenario.scenario.uncertain.emplace().rescue = rescue;
  const study::OddsAnswer m{
      scenario, 1, futures.size(), {}, {}, study::odds_of(study::all_of(futures), 120, true, 0.95), {}, {}};
  Said out{test::unwrapped(to_text(report::pages::odds_page(m), {80, report::Letters::ascii, true})),
           report::html::to_html(report::pages::odds_page(m)),
           nlohmann::json::parse(report::odds_json(m)).at("help")};
  test::check_no_promise(out.text);
  return out;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("help that waits for weather: hours needed, limits, how long it was held back, whose statement") {
  scenario::Rescue rescue = weibull();
  rescue.held_back_above = {17, 4};
  const Said s = said(rescue, twenty(true));
  for (const std::string& text : {s.text, s.page}) {
    CHECK(
        has(text,
            "Help needs 2.1 h to 46 h (8 in 10 cases) of weather it can work in; held back above 17 m/s wind "
            "at 10 m or 4 m significant wave height."));
    CHECK(has(text, "Held back in 75 % ("));
    CHECK(has(text, "in these for 12 h to 5.0 d (8 in 10 of them) in all, before it comes or within 5 d."));
    CHECK(has(text, "In 25 % ("));
    CHECK(
        has(text,
            "the weather is above that for all of 5 d: as stated, help does not come within that time. What "
            "comes after it is not followed."));
    CHECK(has(text, "is a statement of the scenario"));
    CHECK(has(text, "may come in worse weather"));
    CHECK_FALSE(has(text, "The time of rescue was drawn apart from weather"));
  }
  CHECK(s.help["held_back_above"] == nlohmann::json{{"wind_speed_m_s", 17.0}, {"wave_height_m", 4.0}});
  CHECK(s.help["held_back"]["at_all"]["count"] == 15);
  CHECK(s.help["held_back"]["no_weather_within_horizon"]["count"] == 5);
  CHECK(s.help["held_back"]["low_h"] == 12);
  CHECK(s.help["held_back"]["middle_h"] == 12);
  CHECK(s.help["held_back"]["high_h"] == 120);
  CHECK(s.help["none_within_horizon"]["count"] == 5);
  CHECK(s.help["independent_of_crew"] == "assumed");
  CHECK_FALSE(s.help.contains("independent_of_weather_and_crew"));
}

TEST_CASE("weather that never lets help work is said in plain words, and none held back as well") {
  scenario::Rescue rescue = weibull();
  rescue.held_back_above = {{}, 4};
  std::vector<study::Future> futures = twenty(true);
  for (study::Future& f : futures) f = futures.back();
  const Said never = said(rescue, futures);
  CHECK(has(never.text, "held back above 4 m significant wave height."));
  CHECK(has(never.text, "In 100 % ("));
  CHECK(has(never.text, "None within 5 d: 100 %"));
  CHECK(never.help["held_back_above"]["wind_speed_m_s"].is_null());
  const Said none = said(rescue, twenty(false));
  CHECK(has(none.text, "Held back in none of the futures within 5 d."));
  CHECK_FALSE(has(none.text, "for all of 5 d"));
  CHECK(none.help["held_back"]["low_h"].is_null());
}

TEST_CASE("without limits the independence from weather is called an assumption, as before") {
  const Said s = said(weibull(), twenty(false));
  CHECK(has(s.text, "The time of rescue was drawn apart from weather and crew"));
  CHECK_FALSE(has(s.text, "eld back"));
  CHECK(s.help["independent_of_weather_and_crew"] == "assumed");
  CHECK_FALSE(s.help.contains("held_back"));
}

TEST_CASE("help of one future: needed, held back, and the hour; or none within the time followed") {
  scenario::Rescue rescue = weibull();
  const auto text = [&](const study::Help& help) {
    const report::document::Section said = report::help_section({rescue, 18, 120}, help);
    std::string out;
    for (const std::string& each : std::get<report::document::List>(said.blocks.front()).items)
      out += each + " ";
    return out;
  };
  CHECK(has(text({18, 0, false}), "It comes 18 h after the start."));
  CHECK(has(text({130, 0, false}), "None within 5 d."));
  CHECK_FALSE(has(text({18, 0, false}), "eld back"));
  rescue.held_back_above = {17, {}};
  const std::string later = text({30, 12, false});
  CHECK(has(later, "Help needs 18 h of weather it can work in; held back above 17 m/s wind at 10 m."));
  CHECK(has(later, "Held back for 12 h in all, before it comes or within 5 d."));
  CHECK(has(later, "It comes 30 h after the start."));
  const std::string never = text({static_cast<double>(beyond), 120, true});
  CHECK(has(never, "The weather is above that for all of 5 d."));
  CHECK(has(never, "None within 5 d."));
}
