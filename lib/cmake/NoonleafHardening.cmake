# A release that is hard to misuse should it have a fault after all: what compiler and linker can add to our own
# programs and libraries. Only where noonleaf is built by itself: whoever builds it inside another project chooses
# their own flags, and nothing here reaches the installed package. Not with sanitizers, which watch more closely and
# want the plain code; not in Debug, where -D_FORTIFY_SOURCE would only warn that nothing is optimised.
include(CheckCXXCompilerFlag)
include(CheckLinkerFlag)
include(CheckPIESupported)

# Programs that the loader puts anywhere, so that no address is known beforehand.
check_pie_supported()
set(CMAKE_POSITION_INDEPENDENT_CODE ON)

# Checked calls of the C library. Level 2: level 3 of newer compilers also works out sizes at run time, for pointers
# that the C library is handed; here those calls stand within std::string and the standard streams, which know their
# sizes. A distribution may have set a level of its own, hence -U.
set(options -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2)
# Indices, iterators and optionals of the standard library: a wrong one ends the program instead of reading on.
list(APPEND options $<$<COMPILE_LANGUAGE:CXX>:-D_GLIBCXX_ASSERTIONS>)
foreach(flag IN ITEMS -fstack-protector-strong -fstack-clash-protection -fcf-protection)
  string(MAKE_C_IDENTIFIER "noonleaf_has${flag}" known)
  check_cxx_compiler_flag("${flag}" ${known})
  if(${known})
    list(APPEND options "${flag}")
  endif()
endforeach()
add_compile_options("$<$<NOT:$<CONFIG:Debug>>:${options}>")

# Tables of the loader that are read-only once the program runs, all of them filled before it does; data that is never
# run as code.
foreach(flag IN ITEMS -Wl,-z,relro -Wl,-z,now -Wl,-z,noexecstack)
  string(MAKE_C_IDENTIFIER "noonleaf_links${flag}" known)
  check_linker_flag(CXX "${flag}" ${known})
  if(${known})
    add_link_options("$<$<NOT:$<CONFIG:Debug>>:${flag}>")
  endif()
endforeach()
