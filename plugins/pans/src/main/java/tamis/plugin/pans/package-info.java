/** How much fills a pan, covers a cake, and how many it serves. */
@NullMarked
package tamis.plugin.pans;

import org.jspecify.annotations.NullMarked;
