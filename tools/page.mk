# The planning page: the library, text and the bridge as one WebAssembly module,
# and that with styles and scripts in one HTML file. Included by the Makefile.
#
# PAGE_BUILD is one folder for all builds: what is in it depends neither on CC
# nor on SANITIZE.

PAGE_BUILD ?= build/wasm
FETCHED    ?= build/fetched
WASM_CC    ?= clang
WASM_OPTIM ?= -O2
WASM_FLAGS  = --target=wasm32-wasi --sysroot=/usr -isystem /usr/include/wasm32-wasi -msimd128 \
              -std=c11 -ffp-contract=off -fno-math-errno $(WASM_OPTIM) $(WARN) -Iinclude -Isrc \
              -isystem $(FETCHED) -MMD -MP
WASM_LINK   = --target=wasm32-wasi --sysroot=/usr -L/usr/lib/wasm32-wasi -nostartfiles $(WASM_OPTIM) \
              -Wl,--no-entry -Wl,--gc-sections -Wl,--strip-all -Wl,--stack-first -Wl,-z,stack-size=8388608

# The program carries the page where what that takes is there: run `make page` to
# have it installed and fetched.
CARRY_PAGE ?= $(if $(and $(wildcard $(FETCHED)/cjson/cJSON.c),$(shell command -v $(WASM_CC)), \
                $(shell command -v wasm-ld),$(wildcard /usr/include/wasm32-wasi/stdlib.h)),yes)

PAGE_AT = BUILD=$(BUILD) PAGE=$(PAGE_BUILD)/planner.html FETCHED=$(FETCHED)

PAGE_SCRIPTS = $(patsubst %,src/page/%.js,dom told lengths bench scene planning picture key weather mix land \
               own box files leaves start)
PAGE_SOURCES = $(call sources,$(CORE) text page)
PAGE_OBJS    = $(patsubst src/%.c,$(PAGE_BUILD)/%.o,$(PAGE_SOURCES)) \
               $(patsubst src/data/%.txt,$(PAGE_BUILD)/data/%.o,$(TABLES)) $(PAGE_BUILD)/cJSON.o

.PHONY: page setup-page setup-test-page test-page bench-page page-picture
page: setup-page
	$(MAKE) $(PAGE_BUILD)/planner.html
	@echo "$(PAGE_BUILD)/planner.html"
setup-page:
	FETCHED=$(FETCHED) tools/setup.sh page
setup-test-page: setup-page
	FETCHED=$(FETCHED) tools/setup.sh test-page

# In a real browser, against the command line of the same sources.
test-page: setup-test-page
	$(MAKE) $(PAGE_BUILD)/planner.html $(BUILD)/recede
	$(PAGE_AT) tests/page/run.sh
# How long a drawing takes under a moving hand; how the page looks, for docs/.
bench-page: setup-test-page
	$(MAKE) $(PAGE_BUILD)/planner.html
	$(PAGE_AT) node tests/page/speed.mjs
page-picture: setup-test-page
	$(MAKE) $(PAGE_BUILD)/planner.html
	$(PAGE_AT) node tests/page/picture.mjs docs/page.png

$(PAGE_BUILD)/%.o: src/%.c
	@mkdir -p $(@D)
	@echo "wasm $<"
	@$(WASM_CC) $(WASM_FLAGS) -c -o $@ $<
$(PAGE_BUILD)/data/%.c: src/data/%.txt $(BUILD)/tools/tables
	@mkdir -p $(@D)
	@$(BUILD)/tools/tables $< > $@.part && mv $@.part $@
$(PAGE_BUILD)/data/%.o: $(PAGE_BUILD)/data/%.c
	@$(WASM_CC) $(WASM_FLAGS) -c -o $@ $<
$(PAGE_BUILD)/cJSON.o: $(FETCHED)/cjson/cJSON.c
	@mkdir -p $(@D)
	@$(WASM_CC) $(WASM_FLAGS) -w -c -o $@ $<
.PRECIOUS: $(PAGE_BUILD)/data/%.c

$(PAGE_BUILD)/core.wasm: $(PAGE_OBJS)
	@echo "wasm-ld $@"
	@$(WASM_CC) $(WASM_LINK) -o $@ $^
$(PAGE_BUILD)/assemble: tools/page.c tools/sha256.h
	@mkdir -p $(@D)
	$(CC) -std=c11 -O1 -Wall -Wextra -o $@ $< -lz
$(PAGE_BUILD)/planner.html: $(PAGE_BUILD)/assemble $(PAGE_BUILD)/core.wasm src/page/planner.html \
		src/page/style.css src/page/worker.js scenes/clear-noon.json $(PAGE_SCRIPTS)
	$(PAGE_BUILD)/assemble src/page/planner.html src/page/style.css $(PAGE_BUILD)/core.wasm \
	    src/page/worker.js scenes/clear-noon.json $(PAGE_SCRIPTS) > $@.part && mv $@.part $@

PLANNER_PAGE = $(if $(CARRY_PAGE),$(PAGE_BUILD)/planner.html,/dev/null)
$(BUILD)/data/planner_page.c: $(if $(CARRY_PAGE),$(PAGE_BUILD)/planner.html) $(BUILD)/tools/embed
	@mkdir -p $(@D)
	$(BUILD)/tools/embed $(PLANNER_PAGE) recede_planner_page > $@.part && mv $@.part $@

-include $(shell find $(PAGE_BUILD) -name '*.d' 2>/dev/null)
