/** What goes into a formula: densities, composition, allergens, purchase packs. */
@NullMarked
package tamis.engine.ingredient;

import org.jspecify.annotations.NullMarked;
