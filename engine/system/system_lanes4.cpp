// Four simulations in lock step.
#include "system/apply.hpp"
#include "system/members.hpp"

namespace bide::system {

template class System<Lanes<4>>;
template void apply(const ScheduledStop&, System<Lanes<4>>&, std::vector<Lanes<4>>&, Notes);

}  // namespace bide::system
