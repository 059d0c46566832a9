/** Baker's percentages and the temperature of a dough. */
@NullMarked
package tamis.plugin.dough;

import org.jspecify.annotations.NullMarked;
