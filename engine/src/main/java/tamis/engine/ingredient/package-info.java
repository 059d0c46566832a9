/** What an ingredient is: its names, densities, composition and allergens. */
@NullMarked
package tamis.engine.ingredient;

import org.jspecify.annotations.NullMarked;
