// The least kit for other programs.
#include "bide/outcome/cause.hpp"
#include "bide/report/json/common.hpp"
#include "bide/report/provision/provision.hpp"
#include "bide/report/provision/provision_words.hpp"
#include "bide/report/words/text.hpp"
#include "bide/scenario/needs.hpp"

namespace bide::report {
namespace provision_result {
namespace {

using study::KitTried, study::Provision;

// A kit, and the question that it is of.
struct Kit {
  const KitTried* tried;
  const Provision* in;
};

std::vector<Kit> kits(const std::vector<KitTried>& all, const Provision& in) {
  std::vector<Kit> out;
  for (const KitTried& each : all) out.push_back({&each, &in});
  return out;
}
std::optional<Kit> kit(const std::optional<KitTried>& one, const Provision& in) {
  return one ? std::optional(Kit{&*one, &in}) : std::nullopt;
}

Shape<Kit> kit_shape() {
  struct Doses {
    const Kit* kit;
    std::size_t item;
  };
  const auto doses =
      Shape<Doses>()
          .with("lever", [](const Doses& d) { return d.kit->in->items[d.item].offer->lever; })
          .with("doses", [](const Doses& d) { return d.kit->tried->kit[d.item]; })
          .with("items", [](const Doses& d) {
            const Provision& in = *d.kit->in;
            return scenario::burden_of(scenario::doses_of(*in.items[d.item].offer, d.kit->tried->kit[d.item]),
                                       in.asked)
                .items;
          });
  const auto ended = Shape<study::EndedBy>()
                         .with("cause", [](const study::EndedBy& e) { return cause_words(e.limit); })
                         .with("futures", [](const study::EndedBy& e) { return e.futures; });
  return Shape<Kit>()
      .parts("kit", doses,
             [](const Kit& k) {
               std::vector<Doses> out;
               for (std::size_t i = 0; i < k.tried->kit.size(); ++i)
                 if (k.tried->kit[i] > 0) out.push_back({&k, i});
               return out;
             })
      .with("mass_kg", [](const Kit& k) { return k.tried->cost.mass_kg; })
      .with("volume_L", [](const Kit& k) { return k.tried->cost.volume_L; })
      .with(
          "met", [](const Kit& k) { return k.tried->met; }, "futures that meet the target")
      .with("futures", [](const Kit& k) { return k.tried->of; })
      .with(
          "share_at_least", [](const Kit& k) { return k.tried->at_least; }, "exact lower bound at 95 %")
      .parts(
          "ended_by", ended, [](const Kit& k) -> const auto& { return k.tried->ended; });
}

struct Changed {
  const study::DoseChanged* dose;
  const Provision* in;
};
std::vector<Changed> changes(const std::vector<study::DoseChanged>& all, const Provision& in) {
  std::vector<Changed> out;
  for (const study::DoseChanged& each : all) out.push_back({&each, &in});
  return out;
}
Shape<Changed> changed_shape() {
  return Shape<Changed>()
      .with("lever", [](const Changed& c) { return c.in->items[c.dose->item].offer->lever; })
      .part("tried", kit_shape(), [](const Changed& c) {
        return Kit{&c.dose->tried, c.in};
      });
}

struct ForShare {
  const study::KitForShare* point;
  const Provision* in;
};
Shape<ForShare> for_share_shape() {
  return Shape<ForShare>()
      .with("share", [](const ForShare& s) { return s.point->share; })
      .part("least", kit_shape(), [](const ForShare& s) { return kit(s.point->least, *s.in); });
}

const Shape<Provision>& provision_shape() {
  const auto target =
      Shape<Provision>()
          .word("state", {"alive", "able"},
                [](const Provision& in) { return in.question.alive ? "alive" : "able"; })
          .with("until_h", [](const Provision& in) { return in.question.until_h; })
          .with("share", [](const Provision& in) { return in.question.confidence; })
          .with(
              "mass_kg", [](const Provision& in) { return in.question.limits.mass_kg; }, "null: no limit")
          .with(
              "volume_L", [](const Provision& in) { return in.question.limits.volume_L; }, "null: no limit")
          .with("seed", [](const Provision& in) { return in.question.seed; });
  using scenario::Need;
  const auto need = Shape<Need>()
                        .with("words", [](const Need& n) { return plain(n.words); })
                        .with("lasts_h", [](const Need& n) { return n.lasts_h; })
                        .with("doses_lacking", [](const Need& n) { return n.doses_lacking; });
  static const Shape<Provision> shape =
      result_shape<Provision>(provision_format)
          .part(
              "target", target, [](const Provision& in) -> const auto& { return in; })
          .with("in_date_after_utc", [](const Provision& in) { return last_day_utc(in); })
          .part(
              "least", kit_shape(), [](const Provision& in) { return kit(in.least, in); },
              "null: no kit found")
          .part("least_on_fresh_futures", kit_shape(),
                [](const Provision& in) { return kit(in.least_fresh, in); })
          .part(
              "without", kit_shape(),
              [](const Provision& in) {
                return Kit{&in.without, &in};
              },
              "nothing added")
          .part("all_that_is_offered", kit_shape(), [](const Provision& in) { return kit(in.all, in); })
          .part("nearest", kit_shape(), [](const Provision& in) { return kit(in.nearest, in); })
          .part("least_without_limits", kit_shape(),
                [](const Provision& in) { return kit(in.without_limits, in); })
          .parts("share_against_weight", for_share_shape(),
                 [](const Provision& in) {
                   std::vector<ForShare> out;
                   for (const study::KitForShare& point : in.curve) out.push_back({&point, &in});
                   return out;
                 })
          .parts("one_less", changed_shape(), [](const Provision& in) { return changes(in.one_less, in); })
          .parts("one_more", changed_shape(), [](const Provision& in) { return changes(in.one_more, in); })
          .parts("others", kit_shape(), [](const Provision& in) { return kits(in.others, in); })
          .parts(
              "failed_fresh", kit_shape(), [](const Provision& in) { return kits(in.failed_fresh, in); },
              "lighter kits that met the target on the first futures alone")
          .parts("single_people_need", need,
                 [](const Provision& in) { return scenario::needs_of(in.asked, in.question.until_h); })
          .with("kits_run", [](const Provision& in) { return in.kits_run; })
          .with("futures_run", [](const Provision& in) { return in.futures_run; });
  return shape;
}

}  // namespace
}  // namespace provision_result

std::string provision_json(const study::Provision& provision) {
  return json_text(provision_result::provision_shape().of(provision));
}

std::string provision_schema() {
  return provision_result::provision_shape().schema_text("Result of bide provision");
}

}  // namespace bide::report
