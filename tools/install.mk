# Installing: the program, the library with its header, a pkg-config file, the
# manual page and completion for bash. Included by the Makefile.
#
#     make install PREFIX=/usr/local DESTDIR=

PREFIX     ?= /usr/local
DESTDIR    ?=
BINDIR     ?= $(PREFIX)/bin
LIBDIR     ?= $(PREFIX)/lib
INCLUDEDIR ?= $(PREFIX)/include
MANDIR     ?= $(PREFIX)/share/man
BASHDIR    ?= $(PREFIX)/share/bash-completion/completions
VERSION    := $(shell sed -n 's/^.define RECEDE_VERSION "\(.*\)"$$/\1/p' include/recede.h)
INSTALLED   = $(BINDIR)/recede $(LIBDIR)/librecede.a $(LIBDIR)/pkgconfig/recede.pc \
              $(INCLUDEDIR)/recede.h $(MANDIR)/man1/recede.1 $(BASHDIR)/recede
PUBLIC      = $(BUILD)/public

.PHONY: install uninstall
install: setup-build
	$(MAKE) $(BUILD)/recede $(PUBLIC)/librecede.a $(PUBLIC)/recede.pc
	install -D -m 755 $(BUILD)/recede $(DESTDIR)$(BINDIR)/recede
	install -D -m 644 $(PUBLIC)/librecede.a $(DESTDIR)$(LIBDIR)/librecede.a
	install -D -m 644 $(PUBLIC)/recede.pc $(DESTDIR)$(LIBDIR)/pkgconfig/recede.pc
	install -D -m 644 include/recede.h $(DESTDIR)$(INCLUDEDIR)/recede.h
	install -D -m 644 man/recede.1 $(DESTDIR)$(MANDIR)/man1/recede.1
	install -D -m 644 tools/recede.bash $(DESTDIR)$(BASHDIR)/recede
uninstall:
	rm -f $(addprefix $(DESTDIR),$(INSTALLED))

# What the header declares is all that the installed library exports.
$(PUBLIC)/librecede.a: $(LIB) tools/public-symbols.txt tools/install.mk
	@mkdir -p $(@D)
	$(CC) -nostdlib -r -o $(PUBLIC)/recede.o $(CORE_OBJS)
	objcopy --keep-global-symbols=tools/public-symbols.txt $(PUBLIC)/recede.o
	rm -f $@
	$(AR) rcs $@ $(PUBLIC)/recede.o

$(PUBLIC)/recede.pc: Makefile tools/install.mk include/recede.h
	@mkdir -p $(@D)
	printf '%s\n' 'prefix=$(PREFIX)' 'libdir=$(LIBDIR)' 'includedir=$(INCLUDEDIR)' '' \
	    'Name: recede' 'Description: The colours of a painted landscape, planned by distance' \
	    'Version: $(VERSION)' 'Cflags: -I$${includedir}' 'Libs: -L$${libdir} -lrecede -lm' > $@
