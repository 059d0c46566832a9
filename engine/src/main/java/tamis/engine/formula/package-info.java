/** Formulas, their lines and stages, and the batch that is made of one. */
@NullMarked
package tamis.engine.formula;

import org.jspecify.annotations.NullMarked;
