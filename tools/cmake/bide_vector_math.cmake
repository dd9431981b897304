# bide_vector_math(TARGET): where glibc's libmvec has exp and log for this instruction set (x86-64 with AVX2),
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
    typedef double Vector __attribute__((vector_size(32)));
    extern \"C\" Vector _ZGVdN4v_exp(Vector);
    extern \"C\" Vector _ZGVdN4v_log(Vector);
    int main(int n, char**) { return static_cast<int>(_ZGVdN4v_exp(_ZGVdN4v_log(Vector{} + n))[0]); }"
    bide_vector_math_${BIDE_ARCH})
  if(bide_vector_math_${BIDE_ARCH})
    target_compile_definitions(${target} PUBLIC BIDE_VECTOR_MATH)
    target_link_libraries(${target} PUBLIC mvec)
  endif()
endfunction()
