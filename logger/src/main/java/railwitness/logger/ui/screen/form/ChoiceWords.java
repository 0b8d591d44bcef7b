package railwitness.logger.ui.screen.form;

import java.awt.Component;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JList;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Words;

/** A word of a sheet in the list of a choice; a channel also as people call it. */
final class ChoiceWords extends DefaultListCellRenderer {
    @Override
    public Component getListCellRendererComponent(
            JList<?> list, Object value, int index, boolean selected, boolean focused) {
        String word = value == null ? "" : value.toString();
        String people = Words.orElse("choice." + word, ChannelNames.ofText(word));
        String shown = word.isEmpty() ? " " : people;
        return super.getListCellRendererComponent(list, shown, index, selected, focused);
    }
}
