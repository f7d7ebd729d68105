/** What a shop must not lose, kept on disk: written once, synced, readable after any crash. */
package annulus.store;
