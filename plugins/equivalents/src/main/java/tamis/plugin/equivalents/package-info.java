/** One form of an ingredient in place of another. */
@NullMarked
package tamis.plugin.equivalents;

import org.jspecify.annotations.NullMarked;
