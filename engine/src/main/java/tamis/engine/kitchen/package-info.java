/** The kitchen that calculations work in, over any shelf of documents. */
@NullMarked
package tamis.engine.kitchen;

import org.jspecify.annotations.NullMarked;
