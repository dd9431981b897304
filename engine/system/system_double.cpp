// One simulation.
#include "system/apply.hpp"
#include "system/members.hpp"

namespace bide::system {

template class System<double>;
template void apply(const ScheduledStop&, System<double>&, std::vector<double>&, Notes);

}  // namespace bide::system
