package org.heatwright.app.web;
final class ValuesDesk { static String address(String name) { return name; } }
