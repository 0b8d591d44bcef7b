/**
 * A run as the screen sees it: the session goes on on its own thread and is told to a feed; the screen takes bounded
 * snapshots of that feed, as often as it draws, and holds nothing up.
 */
package railwitness.logger.ui.screen.live;
