/** Reading of bodies and queries, writing of answers, faults and the description of the API. */
@NullMarked
package tamis.api.representation;

import org.jspecify.annotations.NullMarked;
