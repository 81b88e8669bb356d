/** JMH benchmarks of what a person or an optimiser waits for. */
package org.heatwright.benchmarks;
