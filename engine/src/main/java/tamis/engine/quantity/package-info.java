/** Masses, volumes, temperatures, money and the units they are written in. */
@NullMarked
package tamis.engine.quantity;

import org.jspecify.annotations.NullMarked;
