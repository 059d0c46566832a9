/** What a plugin offers and what it may use. Stable: see DEVELOPERS.md. */
@NullMarked
package tamis.engine.spi;

import org.jspecify.annotations.NullMarked;
