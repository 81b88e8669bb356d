package org.heatwright.app.api;

/** A record that is asked with: what may be left out of it need not be there. */
interface Asked {}
