package underhook.adapter.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import underhook.adapter.fuzz.Target;
import underhook.core.air.report.WeatherReports;

/** METAR and TAF text, alone and as the weather of a job. */
public final class ReportTarget implements Target {
    private static final List<String> REPORTS =
            List.of(
                    "METAR ZZZZ 080650Z AUTO 22008G18KT 180V260 9999 -SHRA FEW030 BKN045TCU 14/M02 Q1013 NOSIG=",
                    "SPECI ZZZZ 080720Z VRB02KT 0350 R14/P1500U FG VV001 02/02 A2992 RMK AO2 SLP134",
                    "TAF ZZZZ 080500Z 0806/0818 22008KT CAVOK TX19/0815Z TNM02/0806Z PROB30 TEMPO 0812/0816"
                            + " 27020G35KT 3000 TSRA BKN020CB BECMG 0816/0818 25010KT FM081700 20005MPS 1 1/2SM NSW=");

    private final JobFileTarget weather =
            new JobFileTarget(
                    new SampleJob()
                            .with("job.yaml", "file: weather.csv", "file: weather.txt")
                            .with("job.yaml", "  until: \"18:00\"\n", "")
                            .file("weather.txt", REPORTS.get(0)),
                    ".txt");

    @Override
    public List<byte[]> seeds() {
        List<byte[]> seeds = new ArrayList<>();
        REPORTS.forEach(text -> seeds.add(("\0" + text).getBytes(StandardCharsets.UTF_8)));
        seeds.add(("\0" + String.join("\n", REPORTS)).getBytes(StandardCharsets.UTF_8));
        return seeds;
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        if (bytes.length == 0) {
            return false;
        }
        byte[] text = Arrays.copyOfRange(bytes, 1, bytes.length);
        boolean isRead = WeatherReports.parse(new String(text, StandardCharsets.UTF_8)).isDone();
        return weather.read(bytes) || isRead;
    }
}
