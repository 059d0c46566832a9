/** Reads one line of ingredients: how much, of what, in which state, and what is said besides. */
@NullMarked
package tamis.plugin.intake.line;

import org.jspecify.annotations.NullMarked;
