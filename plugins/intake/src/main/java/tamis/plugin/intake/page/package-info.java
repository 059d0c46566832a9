/** Tells the lines of a page apart: title, yield, headings, ingredients, steps and notes. */
@NullMarked
package tamis.plugin.intake.page;

import org.jspecify.annotations.NullMarked;
