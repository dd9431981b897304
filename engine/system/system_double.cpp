// One simulation.
#include "bide/system/apply.hpp"
#include "bide/system/members.hpp"

namespace bide::system {

template class System<double>;
template void apply(const ScheduledStop&, System<double>&, std::vector<double>&, Notes);

}  // namespace bide::system
