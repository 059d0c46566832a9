/** Where formulas, ingredients and prices are kept, every revision of them. */
@NullMarked
package tamis.api.store;

import org.jspecify.annotations.NullMarked;
