/**
 * From readings to a diameter with its uncertainty: grouping by place, form, the budget of JCGM
 * 100, conformity probabilities of JCGM 106, and what instrument or how many readings would decide.
 */
package annulus.measure;
