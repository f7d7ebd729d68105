/**
 * Turns answers into what people and other programs read: text, HTML sheets, pictures, calendar
 * entries and CSV.
 */
package annulus.report;
