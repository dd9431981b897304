// A block of simulations in lock step.
#include "system/apply.hpp"
#include "system/members.hpp"

namespace bide::system {

template class System<BlockLanes>;
template void apply(const ScheduledStop&, System<BlockLanes>&, std::vector<BlockLanes>&, Notes);

}  // namespace bide::system
