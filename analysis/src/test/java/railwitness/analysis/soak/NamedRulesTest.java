package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A plan names a rule by its standard. */
class NamedRulesTest {
    @Test
    void everyRuleHasANameOfItsOwn() {
        List<String> names = Arrays.stream(StabilityRule.values())
                .map(StabilityRule::standard)
                .toList();
        assertThat(new HashSet<>(names)).hasSameSizeAs(names);
        assertThat(names).contains("IEC 60034-1", "IEC 62368-1", "1 K/h");
    }
}
