/** The board: a page at the bench, one at the counter, one at the cabinet, and the same as JSON. */
package annulus.web;
