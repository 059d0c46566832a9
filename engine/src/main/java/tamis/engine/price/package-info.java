/** What ingredients and packaging are bought for. */
@NullMarked
package tamis.engine.price;

import org.jspecify.annotations.NullMarked;
