/** The words of the trade in each language, and a line cut into words, numbers and signs. */
@NullMarked
package tamis.plugin.intake.word;

import org.jspecify.annotations.NullMarked;
