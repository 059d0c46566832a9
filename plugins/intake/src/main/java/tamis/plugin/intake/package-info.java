/** Reads a baker's collection: lines, whole pages, tables and pages of the web, into formulas. */
@NullMarked
package tamis.plugin.intake;

import org.jspecify.annotations.NullMarked;
