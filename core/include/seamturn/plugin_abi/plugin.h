/* SPDX-License-Identifier: MIT */
/* The border between seamturn and its plugins: plain C, UTF-8 text, bytes. Nothing else crosses.
 * A plugin exports one function, seamturn_plugin_entry, returning a descriptor that lives as long
 * as the library. Structs only ever grow at the end; SEAMTURN_ABI_VERSION rises on any other change.
 * A plugin may not let an exception out, touch the file system, or keep a pointer it was given. */
#ifndef SEAMTURN_PLUGIN_ABI_PLUGIN_H
#define SEAMTURN_PLUGIN_ABI_PLUGIN_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

#define SEAMTURN_ABI_VERSION 1u
#define SEAMTURN_PLUGIN_ENTRY "seamturn_plugin_entry"

/* Kinds of plugin. */
#define SEAMTURN_KIND_DOCUMENT_WRITER 1u
#define SEAMTURN_KIND_JOINT_SOURCE 2u /* reserved; not called by this version */

/* Receives bytes; may be called many times. */
typedef void (*seamturn_sink)(void* context, const char* bytes, size_t count);

/* Result of a call: 0 done, anything else failed and a text went to the error sink. */
typedef int32_t seamturn_result;

struct seamturn_text {
  const char* bytes; /* UTF-8, not terminated */
  size_t count;
};

struct seamturn_document_writer {
  uint32_t struct_size;
  /* Names of the documents that a plan gives, one per line, through `names`. */
  seamturn_result (*list)(struct seamturn_text plan_xml, seamturn_sink names, void* names_context,
                          seamturn_sink error, void* error_context);
  /* One document by a name from `list`, its bytes through `out`. */
  seamturn_result (*write)(struct seamturn_text plan_xml, struct seamturn_text name,
                           seamturn_sink out, void* out_context, seamturn_sink error,
                           void* error_context);
};

struct seamturn_plugin {
  uint32_t struct_size;
  uint32_t abi_version;      /* SEAMTURN_ABI_VERSION of the plugin's build */
  uint32_t kind;
  uint32_t plan_schema_major; /* newest plan.xml major it understands */
  const char* id;             /* "procedure-sheet" */
  const char* title;          /* one line for people */
  const char* version;        /* of the plugin, free text */
  const struct seamturn_document_writer* writer; /* of a document writer */
};

typedef const struct seamturn_plugin* (*seamturn_plugin_entry_function)(uint32_t host_abi);

#if defined(__GNUC__)
#define SEAMTURN_EXPORT __attribute__((visibility("default")))
#else
#define SEAMTURN_EXPORT
#endif

#ifdef __cplusplus
}
#endif

#endif
