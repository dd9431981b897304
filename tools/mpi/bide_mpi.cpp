// mpirun -n N bide_mpi study T.json: each rank runs one part of a study, the first joins them and writes the
// results. Parts that exist are taken up where they were left, if N is the same; the results do not depend on
// N.
#include <fmt/core.h>
#include <mpi.h>

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "../bide/output.hpp"
#include "../bide/study_work.hpp"
#include "../bide/terminal.hpp"
#include "bide/core/notice.hpp"
#include "bide/study/questions/ask_study.hpp"

namespace {

using namespace bide;
namespace fs = std::filesystem;

// MPI from the first line to the last, whatever happens between.
class Ranks {
 public:
  Ranks(int& argc, char**& argv) {
    MPI_Init(&argc, &argv);
    MPI_Comm_rank(MPI_COMM_WORLD, &rank_);
    MPI_Comm_size(MPI_COMM_WORLD, &size_);
  }
  ~Ranks() { MPI_Finalize(); }
  Ranks(const Ranks&) = delete;
  Ranks& operator=(const Ranks&) = delete;
  bool first() const { return rank_ == 0; }
  study::Shard shard() const {
    return {static_cast<std::uint64_t>(rank_) + 1, static_cast<std::uint64_t>(size_)};
  }
  // The worst exit code of all; waits for all.
  int agree(int code) const {
    int worst = code;
    MPI_Allreduce(&code, &worst, 1, MPI_INT, MPI_MAX, MPI_COMM_WORLD);
    return worst;
  }

 private:
  int rank_ = 0, size_ = 1;
};

// Done before, or by one rank alone: then there is nothing to share out.
bool is_whole(const study::Study& study, const fs::path& records) {
  if (!fs::exists(records)) return false;
  try {
    study.read(records, [](const study::SampleResult&) {});
  } catch (const study::RecordFileError&) {
    return false;
  }
  return true;
}

int join(const tool::StudyArguments& arguments, std::uint64_t shards) {
  const fs::path folder = tool::folder_of(arguments);
  std::vector<fs::path> parts;
  for (std::uint64_t i = 1; i <= shards; ++i) parts.push_back(folder / study::file_name_of({i, shards}));
  const auto joined = study::join_parts(parts, folder);
  const auto* refusal = std::get_if<study::Refusal>(&joined);
  return refusal ? tool::refuse(*refusal) : tool::exit_ok;
}

// Called by all ranks; every step is agreed on before the next.
int run(const Ranks& ranks, const tool::StudyArguments& arguments) {
  std::optional<study::Study> study;
  const fs::path records = tool::folder_of(arguments) / study::file_name_of({});
  // Every rank reads the file, the first before the others, so that what is wrong with it is said once.
  for (const bool turn : {true, false}) {
    const int code =
        ranks.agree(ranks.first() == turn ? tool::load_study(arguments, {}, study) : tool::exit_ok);
    if (code != tool::exit_ok) return code;
  }
  const bool one = ranks.shard().of == 1;
  const bool whole = ranks.agree(ranks.first() && is_whole(*study, records) ? 1 : 0) == 1;
  if (!whole) {
    int code = ranks.agree(tool::run_shard(*study, arguments, ranks.shard()));
    if (code != tool::exit_ok) return code;
    if (ranks.first() && !one) {
      fs::remove(records);
      code = join(arguments, ranks.shard().of);
    }
    code = ranks.agree(code);
    if (code != tool::exit_ok) return code;
  }
  return ranks.agree(ranks.first() ? tool::write_results(*study, arguments) : tool::exit_ok);
}

}  // namespace

int main(int argc, char** argv) {
  const Ranks ranks(argc, argv);
  tool::Program program("bide_mpi", "bide_mpi: a study of bide over the ranks of MPI.",
                        fmt::format("{}\n{}", standing_notice, standing_advice),
                        {{"mpirun -n 8 bide_mpi study T.json --csv",
                          "Run a study over eight processes; the results are those of bide study T.json."}});
  tool::StudyArguments arguments;
  arguments.threads = 1;  // a rank to a core, unless told otherwise
  tool::Command command = program.command("study", "Many simulations by a design, shared out over the ranks");
  tool::add_study_options(command, arguments);
  command.does([&] { return run(ranks, arguments); });
  try {
    return program.run(argc, argv, !ranks.first());
  } catch (const std::exception& error) {
    tool::say("bide_mpi: {}\n", error.what());
    MPI_Abort(MPI_COMM_WORLD, tool::exit_run_failed);
    return tool::exit_run_failed;
  }
}
