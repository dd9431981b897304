# bide_vector_math(TARGET): where glibc's libmvec has exp and log for this instruction set (x86-64 with AVX2 or AVX-512),
# TARGET and what links it use them for lanes.
include(CheckCXXSourceCompiles)

function(bide_vector_math target)
  if(BIDE_ARCH)
    set(CMAKE_REQUIRED_FLAGS "-march=${BIDE_ARCH}")
  endif()
  set(CMAKE_REQUIRED_LIBRARIES mvec)
  check_cxx_source_compiles("
    #ifndef __AVX2__
    #error lanes are narrower here
    #endif
    typedef double Four __attribute__((vector_size(32)));
    extern \"C\" Four _ZGVdN4v_exp(Four);
    extern \"C\" Four _ZGVdN4v_log(Four);
    #ifdef __AVX512F__
    typedef double Eight __attribute__((vector_size(64)));
    extern \"C\" Eight _ZGVeN8v_exp(Eight);
    extern \"C\" Eight _ZGVeN8v_log(Eight);
    double eight(double x) { return _ZGVeN8v_exp(_ZGVeN8v_log(Eight{} + x))[0]; }
    #else
    double eight(double x) { return x; }
    #endif
    int main(int n, char**) { return static_cast<int>(_ZGVdN4v_exp(_ZGVdN4v_log(Four{} + eight(n)))[0]); }"
    bide_vector_math_${BIDE_ARCH})
  if(bide_vector_math_${BIDE_ARCH})
    target_compile_definitions(${target} PUBLIC BIDE_VECTOR_MATH)
    target_link_libraries(${target} PUBLIC mvec)
  endif()
endfunction()
