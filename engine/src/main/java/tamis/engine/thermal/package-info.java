/** Heat capacity, density and conductivity of what is mixed. */
@NullMarked
package tamis.engine.thermal;

import org.jspecify.annotations.NullMarked;
