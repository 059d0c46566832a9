/** What is in a product, for those who eat it and for its label. */
@NullMarked
package tamis.plugin.nutrition;

import org.jspecify.annotations.NullMarked;
