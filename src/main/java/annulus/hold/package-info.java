/**
 * What a joint holds: bond, friction and both together; the check against a load; what it takes to
 * undo it; how much compound it needs. Pure calculations; every factor comes from data.
 */
package annulus.hold;
