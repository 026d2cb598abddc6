# A build that watches itself: everything with the sanitizers of NOONLEAF_SANITIZE, stopping at the first finding.
set(NOONLEAF_DISPATCH OFF)  # the loader picks functions before a sanitizer is ready
add_compile_options(-fsanitize=${NOONLEAF_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer
                    -gline-tables-only)
add_link_options(-fsanitize=${NOONLEAF_SANITIZE})
