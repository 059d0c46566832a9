/** The versions that change each on its own. */
@NullMarked
package tamis.api.version;

import org.jspecify.annotations.NullMarked;
