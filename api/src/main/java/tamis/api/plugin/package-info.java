/** Finds plugins, keeps them apart and stops what does not end. */
@NullMarked
package tamis.api.plugin;

import org.jspecify.annotations.NullMarked;
