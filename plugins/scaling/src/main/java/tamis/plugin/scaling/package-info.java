/** A formula at another size. */
@NullMarked
package tamis.plugin.scaling;

import org.jspecify.annotations.NullMarked;
