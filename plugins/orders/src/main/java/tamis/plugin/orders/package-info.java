/** From orders to a price for the customer and a sheet for the morning. */
@NullMarked
package tamis.plugin.orders;

import org.jspecify.annotations.NullMarked;
