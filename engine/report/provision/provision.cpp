#include "bide/report/provision/provision.hpp"

#include "bide/core/notice.hpp"
#include "bide/report/provision/provision_words.hpp"
#include "bide/report/run/json_parts.hpp"
#include "bide/scenario/needs.hpp"

namespace bide::report {
namespace {

using Json = nlohmann::ordered_json;
using study::DoseChanged;
using study::KitTried;
using study::Provision;

Json tried_json(const Provision& in, const KitTried& tried) {
  Json doses = Json::array(), ended = Json::array();
  for (std::size_t i = 0; i < tried.kit.size(); ++i)
    if (tried.kit[i] > 0)
      doses.push_back(
          {{"lever", in.items[i].offer->lever},
           {"doses", tried.kit[i]},
           {"items",
            scenario::burden_of(scenario::doses_of(*in.items[i].offer, tried.kit[i]), in.asked).items}});
  for (const auto& [limit, futures] : tried.ended)
    ended.push_back({{"cause", cause_words(limit)}, {"futures", futures}});
  return {{"kit", doses},
          {"mass_kg", json_number(tried.cost.mass_kg)},
          {"volume_L", json_number(tried.cost.volume_L)},
          {"met", tried.met},
          {"futures", tried.of},
          {"share_at_least", json_number(tried.at_least)},
          {"ended_by", ended}};
}

Json changed_json(const Provision& in, const std::vector<DoseChanged>& all) {
  Json out = Json::array();
  for (const DoseChanged& each : all) {
    Json one{{"lever", in.items[each.item].offer->lever}};
    one["tried"] = tried_json(in, each.tried);
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace

std::string provision_json(const Provision& in) {
  Json json;
  json["format"] = provision_format;
  json["notice"] = {std::string(standing_notice), std::string(standing_advice)};
  json["made_by"] = made_by();
  json["target"] = {{"state", in.question.alive ? "alive" : "able"},
                    {"until_h", json_number(in.question.until_h)},
                    {"share", json_number(in.question.confidence)},
                    {"mass_kg", json_number(in.question.limits.mass_kg)},
                    {"volume_L", json_number(in.question.limits.volume_L)},
                    {"seed", in.question.seed}};
  json["in_date_after_utc"] = last_day_utc(in);
  json["least"] = in.least ? tried_json(in, *in.least) : Json(nullptr);
  json["least_on_fresh_futures"] = in.least_fresh ? tried_json(in, *in.least_fresh) : Json(nullptr);
  json["without"] = tried_json(in, in.without);
  json["all_that_is_offered"] = in.all ? tried_json(in, *in.all) : Json(nullptr);
  json["nearest"] = in.nearest ? tried_json(in, *in.nearest) : Json(nullptr);
  json["least_without_limits"] = in.without_limits ? tried_json(in, *in.without_limits) : Json(nullptr);
  json["share_against_weight"] = Json::array();
  for (const study::KitForShare& point : in.curve)
    json["share_against_weight"].push_back(
        {{"share", json_number(point.share)},
         {"least", point.least ? tried_json(in, *point.least) : Json(nullptr)}});
  json["one_less"] = changed_json(in, in.one_less);
  json["one_more"] = changed_json(in, in.one_more);
  for (const auto& [key, list] :
       {std::pair{"others", &in.others}, std::pair{"failed_fresh", &in.failed_fresh}}) {
    json[key] = Json::array();
    for (const KitTried& each : *list) json[key].push_back(tried_json(in, each));
  }
  json["single_people_need"] = Json::array();
  for (const scenario::Need& each : scenario::needs_of(in.asked, in.question.until_h))
    json["single_people_need"].push_back(
        {{"words", plain(each.words)},
         {"lasts_h", each.lasts_h ? json_number(*each.lasts_h) : Json(nullptr)},
         {"doses_lacking", each.doses_lacking}});
  json["kits_run"] = in.kits_run;
  json["futures_run"] = in.futures_run;
  return json_text(json);
}

}  // namespace bide::report
