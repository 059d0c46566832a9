/** Formulas, how much of them to make, and the batch that comes of it. */
@NullMarked
package tamis.engine.formula;

import org.jspecify.annotations.NullMarked;
