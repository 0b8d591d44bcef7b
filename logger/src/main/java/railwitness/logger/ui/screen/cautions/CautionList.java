package railwitness.logger.ui.screen.cautions;

import java.awt.Color;
import java.util.function.Function;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.caution.Briefing;
import railwitness.safety.caution.Caution;
import railwitness.safety.caution.SignalWord;

/** The cautions of this unit, gravest first as they come. */
final class CautionList extends Readable {
    CautionList(Briefing briefing) {
        super(new MigLayout("insets 0 0 0 12, gap 0, wrap 1, fillx", "[grow,fill]"));
        setOpaque(false);
        setName("cautions list");
        add(Label.of(Words.of("cautions.title"), Type.TITLE), "gapbottom 2");
        add(Note.muted(Words.of("cautions.caption"), Type.TEXT), "gapbottom 8, wmin 60");
        briefing.refusals()
                .forEach(words -> add(new Note(words, Type.TEXT_STRONG, Palette::fault), "gapbottom 8, wmin 60"));
        briefing.cautions().forEach(this::caution);
    }

    private void caution(Caution caution) {
        Function<Palette, Color> colour = caution.word() == SignalWord.DANGER ? Palette::fault : Palette::ink;
        Label word = new Label(caution.word().name(), Type.TEXT_STRONG, colour);
        add(new FlowRow(8, word, Label.of(caution.topic().title(), Type.TEXT_STRONG)), "gaptop 10, growx, wmin 0");
        if (!caution.here().isEmpty()) {
            add(Note.of(caution.here(), Type.TEXT), "gaptop 2, wmin 60");
        }
        add(Note.muted(caution.topic().text(), Type.TEXT), "gaptop 2, wmin 60");
    }
}
