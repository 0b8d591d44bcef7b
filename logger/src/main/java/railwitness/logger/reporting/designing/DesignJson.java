package railwitness.logger.reporting.designing;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.OptionalDouble;
import railwitness.analysis.transformer.Core;
import railwitness.analysis.transformer.DesignLine;
import railwitness.analysis.transformer.DesignReport;
import railwitness.analysis.transformer.DesignSheet;
import railwitness.analysis.transformer.ProposalReport;
import railwitness.analysis.transformer.SheetGap;
import railwitness.analysis.transformer.ToroidDesign;
import railwitness.analysis.transformer.Winding;
import railwitness.logger.text.VisibleText;

/** A transformer's design, or turns proposed for one, as JSON for other programs: keys are only added. */
public final class DesignJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private DesignJson() {}

    /** Indented, UTF-8 text, one line feed at its end. */
    public static String of(DesignReport report) {
        ObjectNode root = NODES.objectNode();
        root.put("unit", report.wound().design().unit().name());
        root.put("holds", report.holds());
        root.put("verdict", report.verdict());
        root.put("limits", report.limiting().map(DesignLine::name).orElse(null));
        root.set("toroid", report.toroid().map(DesignJson::toroid).orElse(null));
        root.set("lines", lines(report.lines()));
        root.set("missing", gaps(report.gaps()));
        return text(root);
    }

    /** The same for proposals. */
    public static String of(ProposalReport report) {
        ObjectNode root = NODES.objectNode();
        root.put("unit", report.wound().design().unit().name());
        ArrayNode own = root.putArray("this_core");
        report.own().forEach(sheet -> own.add(choice(sheet)));
        ArrayNode rings = root.putArray("ring_cores");
        report.rings().forEach(sheet -> rings.add(choice(sheet)));
        root.set("missing", gaps(report.gaps()));
        return text(root);
    }

    private static ObjectNode choice(DesignSheet sheet) {
        ObjectNode node = NODES.objectNode();
        node.put("holds", sheet.holds());
        node.put("limits", sheet.limiting().map(DesignLine::name).orElse(null));
        node.set("toroid", toroid(sheet.design()));
        node.set("lines", lines(sheet.lines()));
        return node;
    }

    private static ObjectNode toroid(ToroidDesign design) {
        ObjectNode node = NODES.objectNode();
        Core core = design.core();
        node.putObject("core")
                .put("outer_m", metres(core.outerMetres()))
                .put("inner_m", metres(core.innerMetres()))
                .put("height_m", metres(core.heightMetres()))
                .put("material", core.material().name());
        node.set("primary", winding(design.primary()));
        node.set("secondary", winding(design.secondary()));
        return node;
    }

    private static ObjectNode winding(Winding winding) {
        return NODES.objectNode()
                .put("turns_of_a_half", winding.turns())
                .put("strands", winding.wire().strands())
                .put("strand_m", metres(winding.wire().diameterMetres()));
    }

    /** Nine digits: beyond them two makes of the Java machine may differ. */
    private static double digits(double value) {
        return new BigDecimal(value).round(new MathContext(9)).doubleValue();
    }

    private static double metres(double value) {
        return Math.round(value * 1e9) / 1e9;
    }

    private static ArrayNode lines(List<DesignLine> lines) {
        ArrayNode all = NODES.arrayNode();
        lines.forEach(line -> {
            ObjectNode node = all.addObject();
            node.put("name", line.name()).put("value", digits(line.value())).put("unit", line.unit());
            node.put("at_least", orNull(line.atLeast()));
            node.put("at_most", orNull(line.atMost()));
            node.put("share", orNull(line.share()));
            node.put("holds", line.holds());
            node.put("formula", line.formula()).put("source", line.source());
            node.put("weak", line.weak().isEmpty() ? null : line.weak());
        });
        return all;
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? Double.valueOf(digits(value.getAsDouble())) : null;
    }

    private static ArrayNode gaps(List<SheetGap> gaps) {
        ArrayNode all = NODES.arrayNode();
        gaps.forEach(gap -> all.addObject().put("keys", gap.keys()).put("costs", gap.costs()));
        return all;
    }

    private static String text(ObjectNode root) {
        try {
            return VisibleText.json(new ObjectMapper()
                            .enable(SerializationFeature.INDENT_OUTPUT)
                            .writeValueAsString(root)
                            .replace("\r\n", "\n"))
                    + "\n";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
