package underhook.adapter.geofile.aixm;

/** A message with a mast, a power line between pylons and a cableway; invented. */
public final class SampleMessage {
    public static final String TEXT =
            AixmReaderTest.message(
                    AixmReaderTest.structure(
                            AixmReaderTest.slice(
                                    AixmReaderTest.part(
                                            AixmReaderTest.extent("120", "M")
                                                    + AixmReaderTest.point(
                                                            AixmReaderTest.LAT_LON,
                                                            "46.25 11.5",
                                                            "<aixm:elevation"
                                                                    + " uom=\"FT\">900</aixm:elevation>")))),
                    AixmReaderTest.structure(
                            AixmReaderTest.slice(
                                    "<aixm:type>TRANSMISSION_LINE</aixm:type>"
                                            + AixmReaderTest.part(
                                                    AixmReaderTest.NIL
                                                            + AixmReaderTest.curve(
                                                                    AixmReaderTest.LON_LAT,
                                                                    "11.5 46.25 11.51 46.26"))
                                            + AixmReaderTest.part(
                                                    AixmReaderTest.extent("42", "M")
                                                            + AixmReaderTest.point(
                                                                    AixmReaderTest.LON_LAT,
                                                                    "11.5 46.25",
                                                                    "")))),
                    AixmReaderTest.structure(
                            AixmReaderTest.slice(
                                    "<aixm:type>CABLE_CAR</aixm:type>"
                                            + AixmReaderTest.part(
                                                    AixmReaderTest.curve(
                                                            AixmReaderTest.LAT_LON,
                                                            "46.25 11.5 46.26 11.51 46.27"
                                                                    + " 11.51")))));

    private SampleMessage() {}
}
