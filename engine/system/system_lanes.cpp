// A block of simulations in lock step.
#include "bide/system/apply.hpp"
#include "bide/system/members.hpp"

namespace bide::system {

template class System<BlockLanes>;
template void apply(const ScheduledStop&, System<BlockLanes>&, std::vector<BlockLanes>&, Notes);

}  // namespace bide::system
