# What looks at the code without, or beside, the tests. Included by the Makefile.

.PHONY: static tidy cppcheck valgrind coverage setup-checks
setup-checks:
	tools/setup.sh checks

# Static checks: configured by .clang-tidy and tools/cppcheck.txt.
CHECKED   = $(sort $(wildcard src/*/*.c tools/*.c))
TIDY_JOBS ?= $(shell nproc 2>/dev/null || echo 1)
static: setup-checks
	$(MAKE) cppcheck tidy
tidy:
	@echo "clang-tidy: $(words $(CHECKED)) files"
	@printf '%s\n' $(CHECKED) | xargs -P $(TIDY_JOBS) -n 8 tools/tidy.sh $(FRONT_FLAGS)
cppcheck:
	cppcheck --quiet --std=c11 --enable=warning,performance,portability --inline-suppr \
	    --suppressions-list=tools/cppcheck.txt --error-exitcode=1 -j $(TIDY_JOBS) \
	    -Iinclude -Isrc src include tools

# Every command under valgrind: no leak, no use of what is not there.
valgrind: setup-checks
	$(MAKE) $(BUILD)/recede
	BUILD=$(BUILD) tools/valgrind.sh

# Line coverage of the core by the tests, and what they leave out.
coverage: setup-test
	$(MAKE) BUILD=$(BUILD)/coverage OPTIM=-O0 HARDEN= CFLAGS='-g --coverage' LDFLAGS=--coverage \
	    TEST_LIBS='$(TEST_LIBS) --coverage' tests-built $(BUILD)/coverage/recede
	BUILD=$(BUILD)/coverage tools/coverage.sh
