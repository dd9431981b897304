# What the engine needs besides itself when it is compiled for a browser (Debian: emscripten). The packages' own
# files for CMake are of this machine's processor, and its include folder would hide the compiler's own headers: so
# each library's headers are reached through a link of their own.
set(headers ${PROJECT_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${headers})
function(bide_headers_only target found)
  find_path(where ${found} PATHS /usr/include /usr/include/eigen3 NO_CACHE NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
  foreach(name ${found} ${ARGN})
    string(REGEX REPLACE "/.*" "" top ${name})
    file(CREATE_LINK ${where}/${top} ${headers}/${top} SYMBOLIC)
  endforeach()
  add_library(${target} INTERFACE IMPORTED)
  target_include_directories(${target} SYSTEM INTERFACE ${headers})
endfunction()
bide_headers_only(Eigen3::Eigen Eigen/Core)
bide_headers_only(Boost::headers boost/version.hpp)
bide_headers_only(fmt::fmt fmt/format.h)
target_compile_definitions(fmt::fmt INTERFACE FMT_HEADER_ONLY)
bide_headers_only(nlohmann_json::nlohmann_json nlohmann/json.hpp)
bide_headers_only(utf8proc::utf8proc utf8proc.h)  # tools/browser/unicode.cpp has the functions
add_library(TBB::tbb INTERFACE IMPORTED)          # no threads: see study/ensemble/parallel.hpp

target_compile_options(bide_options INTERFACE -msimd128)
