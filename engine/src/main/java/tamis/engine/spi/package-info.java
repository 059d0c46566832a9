/** The contract between the engine and a plugin. */
@NullMarked
package tamis.engine.spi;

import org.jspecify.annotations.NullMarked;
