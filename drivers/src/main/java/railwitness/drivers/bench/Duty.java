package railwitness.drivers.bench;

import railwitness.drivers.instrument.LoadSetting;
import railwitness.drivers.instrument.MeterSetting;
import railwitness.drivers.instrument.ScopeSetting;
import railwitness.drivers.instrument.SupplySetting;

/** What kind an instrument is and how it is used. */
public sealed interface Duty {
    record AsSupply(SupplySetting setting) implements Duty {}

    record AsMeter(MeterSetting setting) implements Duty {}

    record AsLoad(LoadSetting setting) implements Duty {}

    record AsScope(ScopeSetting setting) implements Duty {}
}
