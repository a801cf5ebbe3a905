# recede: `make study` and `make test` set up, build and run. See DEVELOPERS.md.

BUILD   ?= build
CC      ?= cc
FONT    ?= /usr/share/fonts/truetype/lato/Lato-Regular.ttf
OPTIM   ?= -O2
ifdef SANITIZE
SANFLAGS = -fsanitize=$(SANITIZE) -fno-sanitize-recover=all -fno-omit-frame-pointer
endif
ifdef WERROR
WARN_ERR = -Werror
endif

# Hardening; the sanitizers bring their own checks and need the plain functions. Hidden
# names cost a position-independent library nothing: all of it is linked as one.
ifndef SANITIZE
HARDEN      = -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2 -fstack-protector-strong
endif
POSITION    = -fPIC -fvisibility=hidden
HARDEN_LINK = -pie -Wl,-z,relro,-z,now

WARN    = -Wall -Wextra -Wpedantic -Wshadow -Wstrict-prototypes -Wmissing-prototypes $(WARN_ERR)
CFLAGS  ?= -g
BASE    = -std=c11 -ffp-contract=off -fno-math-errno $(OPTIM) $(CFLAGS) $(WARN) $(HARDEN) $(POSITION) $(SANFLAGS) -Iinclude -Isrc -MMD -MP
POSIX   = -D_POSIX_C_SOURCE=200809L
FRONT_PKGS = libcjson libpng zlib cairo pangocairo pangoft2 fontconfig
FRONT_FLAGS = $(POSIX) -DRECEDE_FONT='"$(FONT)"' $(shell pkg-config --cflags $(FRONT_PKGS))
FRONT_LIBS = $(shell pkg-config --libs $(FRONT_PKGS)) -lm
TEST_PKGS = cmocka lcms2
TEST_FLAGS = $(FRONT_FLAGS) -Itests $(shell pkg-config --cflags $(TEST_PKGS))
TEST_LIBS = $(shell pkg-config --libs $(TEST_PKGS)) $(FRONT_LIBS)

CORE    = colour air paint plan picture
FRONT   = text file draw
sources = $(sort $(wildcard $(addprefix src/,$(addsuffix /*.c,$(1)))))
objects = $(patsubst %.c,$(BUILD)/%.o,$(1))

TABLES      := $(sort $(wildcard src/data/*.txt))
TABLE_OBJS  := $(patsubst src/data/%.txt,$(BUILD)/data/%.o,$(TABLES))
CORE_OBJS   := $(call objects,$(call sources,$(CORE))) $(TABLE_OBJS)
FRONT_OBJS  := $(call objects,$(call sources,$(FRONT))) $(BUILD)/data/builtin_scene.o
CLI_OBJS    := $(call objects,$(call sources,cli)) $(BUILD)/data/planner_page.o
LIB         := $(BUILD)/librecede.a
FRONT_LIB   := $(BUILD)/libfront.a
TEST_SRCS   := $(sort $(wildcard tests/*/test_*.c))
TEST_BINS   := $(patsubst %.c,$(BUILD)/%,$(TEST_SRCS))
SUPPORT_OBJS := $(call objects,$(sort $(wildcard tests/support/*.c)))

.PHONY: all pictures study test setup-build setup-test run-tests sanitize fuzz bench clean
all: $(BUILD)/recede

pictures: study
	$(BUILD)/recede study -o $(BUILD)/study.pdf > /dev/null
	pdftoppm -png -r 110 -f 1 -l 2 $(BUILD)/study.pdf $(BUILD)/study-page
	cp $(BUILD)/study-page-1.png $(BUILD)/study-page-2.png docs/

study: setup-build
	$(MAKE) $(BUILD)/recede
	$(BUILD)/recede study -o $(BUILD)/study.png

test: setup-test
	$(MAKE) $(BUILD)/recede tests-built
	$(MAKE) run-tests

setup-build:
	tools/setup.sh build
setup-test:
	tools/setup.sh test

.PHONY: tests-built
tests-built: $(TEST_BINS)
run-tests: $(BUILD)/recede $(TEST_BINS)
	BUILD=$(BUILD) CC="$(CC)" tools/run-tests.sh $(TEST_BINS)

# The same tests under AddressSanitizer and UndefinedBehaviorSanitizer.
sanitize: setup-test
	$(MAKE) BUILD=$(BUILD)/sanitize SANITIZE=address,undefined OPTIM=-O1 tests-built $(BUILD)/sanitize/recede
	$(MAKE) BUILD=$(BUILD)/sanitize SANITIZE=address,undefined OPTIM=-O1 run-tests

# Coverage-guided fuzzing by clang's libFuzzer, every target FUZZ_SECONDS long, as many
# at a time as there are processors; what it keeps and finds stands in build/fuzz/.
FUZZ_SECONDS ?= 1200
FUZZ_TARGETS ?= $(patsubst tests/fuzz/fuzz_%.c,%,$(sort $(wildcard tests/fuzz/fuzz_*.c)))
fuzz: setup-test
	$(MAKE) BUILD=$(BUILD)/fuzz CC=clang SANITIZE=fuzzer-no-link,address,undefined OPTIM=-O1 \
	    $(patsubst %,$(BUILD)/fuzz/fuzz_%,$(FUZZ_TARGETS))
	BUILD=$(BUILD)/fuzz SECONDS_EACH=$(FUZZ_SECONDS) tools/fuzz.sh $(FUZZ_TARGETS)
$(BUILD)/fuzz_%: tests/fuzz/fuzz_%.c $(FRONT_LIB) $(LIB)
	clang $(BASE) -fsanitize=fuzzer,address,undefined $(FRONT_FLAGS) -Itests -MF $@.d -o $@ $(filter %.c %.a,$^) $(FRONT_LIBS)

$(BUILD)/recede: $(CLI_OBJS) $(FRONT_LIB) $(LIB)
	$(CC) $(SANFLAGS) $(HARDEN_LINK) $(LDFLAGS) -o $@ $^ $(FRONT_LIBS)

$(LIB): $(CORE_OBJS)
	rm -f $@
	$(AR) rcs $@ $^
$(FRONT_LIB): $(FRONT_OBJS)
	rm -f $@
	$(AR) rcs $@ $^

$(BUILD)/tools/tables: tools/tables.c
	@mkdir -p $(@D)
	$(CC) -std=c11 -O1 -Wall -Wextra -o $@ $<
$(BUILD)/data/%.c: src/data/%.txt $(BUILD)/tools/tables
	@mkdir -p $(@D)
	$(BUILD)/tools/tables $< > $@.part && mv $@.part $@
$(BUILD)/data/%.o: $(BUILD)/data/%.c
	$(CC) $(BASE) -c -o $@ $<
.PRECIOUS: $(BUILD)/data/%.c

$(BUILD)/tools/embed: tools/embed.c
	@mkdir -p $(@D)
	$(CC) -std=c11 -O1 -Wall -Wextra -o $@ $<
$(BUILD)/data/builtin_scene.c: scenes/clear-noon.json $(BUILD)/tools/embed
	@mkdir -p $(@D)
	$(BUILD)/tools/embed $< recede_builtin_scene > $@.part && mv $@.part $@

# The core knows no headers beyond the C library's.
$(foreach part,$(CORE),$(eval $(BUILD)/src/$(part)/%.o: src/$(part)/%.c ; @mkdir -p $$(@D) && echo "cc $$<" && $$(CC) $$(BASE) -c -o $$@ $$<))
$(BUILD)/src/%.o: src/%.c
	@mkdir -p $(@D)
	@echo "cc $<"
	@$(CC) $(BASE) $(FRONT_FLAGS) -c -o $@ $<
$(BUILD)/tests/support/%.o: tests/support/%.c
	@mkdir -p $(@D)
	@$(CC) $(BASE) $(TEST_FLAGS) -c -o $@ $<
$(BUILD)/tests/%: tests/%.c $(SUPPORT_OBJS) $(FRONT_LIB) $(LIB)
	@mkdir -p $(@D)
	@echo "cc $<"
	@$(CC) $(BASE) $(TEST_FLAGS) -MF $@.d -o $@ $< $(SUPPORT_OBJS) $(FRONT_LIB) $(LIB) $(TEST_LIBS)

# Other flags make other objects.
$(CORE_OBJS) $(FRONT_OBJS) $(CLI_OBJS) $(SUPPORT_OBJS): Makefile

# Timings, never part of a test. Without NLopt it says so and goes on.
BENCH_OBJS := $(call objects,$(sort $(wildcard tests/bench/*.c)))
NLOPT_FLAGS = $(shell pkg-config --exists nlopt && echo -DRECEDE_NLOPT `pkg-config --cflags nlopt`)
NLOPT_LIBS = $(shell pkg-config --exists nlopt && pkg-config --libs nlopt)
bench: setup-build
	-tools/setup.sh bench
	$(MAKE) $(BUILD)/recede $(BUILD)/bench
	$(BUILD)/bench $(BUILD)/recede
$(BUILD)/bench: $(BENCH_OBJS) $(FRONT_LIB) $(LIB)
	$(CC) $(SANFLAGS) $(LDFLAGS) -o $@ $^ $(NLOPT_LIBS) $(FRONT_LIBS)
$(BUILD)/tests/bench/%.o: tests/bench/%.c
	@mkdir -p $(@D)
	@echo "cc $<"
	@$(CC) $(BASE) -D_DEFAULT_SOURCE $(FRONT_FLAGS) -Itests $(NLOPT_FLAGS) -c -o $@ $<

clean:
	rm -rf $(BUILD)

.SECONDARY: $(SUPPORT_OBJS)

include tools/page.mk
include tools/install.mk
include tools/checks.mk

-include $(shell find $(BUILD) -name '*.d' 2>/dev/null)
