#define BOOST_TEST_MODULE noonleaf
#include <boost/test/unit_test.hpp>
