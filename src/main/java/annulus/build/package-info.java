/** Steps of the build that work on compiled classes. None of it is in the finished program. */
package annulus.build;
