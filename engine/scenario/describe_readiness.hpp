// The fields of "readiness" and of its chances, described like all others (describe.hpp includes this).
#pragma once

#include "bide/constants/readiness.hpp"
#include "bide/scenario/field.hpp"
#include "bide/scenario/readiness.hpp"

namespace bide::scenario {

template <class V>
void describe(As<Readiness>, V&& v) {
  using R = Readiness;
  constexpr Absent unknown = stays_empty("not known, and said so");
  v(&R::raft_made, text("raft_made", unknown, "Date of manufacture of the raft, as 2027-03-31."));
  v(&R::raft_serviced, text("raft_serviced", unknown, "Date of the raft's last service."));
  v(&R::service_interval_months,
    number("service_interval_months", "months", 1, 120, otherwise(constants::service_interval_months.value),
           "Months from one service to the next."));
  v(&R::release_unit_expires,
    text("release_unit_expires", unknown, "Date on the hydrostatic release; later it may act deeper."));
  v(&R::pack_expires,
    text("pack_expires", unknown, "Date on water and food of the pack; later they count as absent."));
  v(&R::signals_expire, text("signals_expire", unknown,
                             "Date on the pyrotechnics; before and after it a published share of them fails. "
                             "Left out, all of them work."));
  v(&R::medicines_expire,
    text("medicines_expire", unknown, "Date on the medicines; later they count as absent."));
  v(&R::raised_with_clear_drains,
    yes_or_no("raised_with_clear_drains", unknown, "The container stands off the deck with clear drains."));
  v(&R::dry_with_nothing_on_top,
    yes_or_no("dry_with_nothing_on_top", unknown, "The valise is dry, with nothing on top of it."));
  v(&R::painter_by_weak_link,
    yes_or_no("painter_by_weak_link", unknown, "The painter is fast to a strong point by the weak link."));
  v(&R::no_extra_lashings,
    yes_or_no("no_extra_lashings", unknown, "Nothing but the strap of the release holds the raft."));
  v(&R::signals_position, number("signals_position", "1", 0, 1, otherwise(0.5),
                                 "Where in the distribution of how many signals work: 0 fewest, 1 most."));
}

template <class V>
void describe(As<RaftChances>, V&& v) {
  using R = RaftChances;
  constexpr Absent counted = stays_empty("drawn from the interval of the published count");
  v(&R::neglected, number("neglected", "1", 0, 1, stays_empty("by how long the service is overdue"),
                          "Chance that the raft is neglected, on which all its failures hang."));
  v(&R::not_inflating,
    number("not_inflating", "1", 0, 1, counted, "Chance that a neglected raft does not inflate."));
  v(&R::tube_leaking,
    number("tube_leaking", "1", 0, 1, counted, "Chance that a tube of a neglected raft leaks."));
  v(&R::valve_lost,
    number("valve_lost", "1", 0, 1, counted,
           "Chance that a relief valve of a neglected raft gives way, so that a tube leaks."));
  v(&R::floor_failed,
    number("floor_failed", "1", 0, 1, counted, "Chance that the inflated floor of a neglected raft fails."));
  v(&R::lamp_dead,
    number("lamp_dead", "1", 0, 1, counted, "Chance that the lamps of a neglected raft fail."));
}

template <class V>
void describe(As<Launch>, V&& v) {
  using L = Launch;
  namespace c = constants;
  constexpr Absent uncounted = otherwise(0);
  v(&L::way, word_of("way", required, "Launched by hand, or floated free from a sinking ship."));
  v(&L::rafts, number("rafts", "rafts", 1, 2, otherwise(1), "Rafts like this one; the next if one is lost."));
  v(&L::sinks_after_min, object("sinks_after_min", stays_empty("the deck outlasts the launch"),
                                "Minutes from the order to launch until the deck is gone; by_hand alone."));
  v(&L::painter_not_fast, number("painter_not_fast", "1", 0, 1, uncounted,
                                 "Chance that the painter is not made fast, and the raft lost; no count "
                                 "is published."));
  v(&L::swept_off, number("swept_off", "1", 0, 1, uncounted,
                          "Chance that the sea takes the raft first; no count that was read."));
  v(&L::one_chamber, number("one_chamber", "1", 0, 1, uncounted,
                            "Chance that one chamber alone inflates; no count is published."));
  v(&L::inflates_inverted, number("inflates_inverted", "1", 0, 1, otherwise(c::inflates_inverted.value),
                                  "Chance that it inflates upside down: an instructor's words, no count."));
  v(&L::not_righted, number("not_righted", "1", 0, 1, uncounted,
                            "Chance that nobody rights a raft that is upside down; no count is published."));
  v(&L::steps_across,
    number("steps_across", "1", 0, 1, otherwise(c::steps_across.value),
           "Chance to step from the deck into a raft alongside; judgement. by_hand alone."));
  v(&L::painter_length_m, number("painter_length_m", "m", 1, 200, otherwise(c::painter_length_m.value),
                                 "Painter that must run out before a raft that floats free inflates."));
  v(&L::stowage_height_m, number("stowage_height_m", "m", 0, 60, uncounted,
                                 "Height of the stowed raft above the keel, by which a ship on the bottom "
                                 "holds it nearer to the surface; "
                                 "float_free alone."));
  v(&L::water_depth_m, number("water_depth_m", "m", 1, 11000, stays_empty("deeper than release and painter"),
                              "Depth of the water; float_free alone."));
  v(&L::packed_buoyancy_N,
    number("packed_buoyancy_N", "N", 0, 20000, stays_empty("more than the pull that inflates the raft"),
           "Lift of the packed raft under water; float_free alone."));
}

}  // namespace bide::scenario
