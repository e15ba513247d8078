package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.Test;

class LogsTest {
    /** Common practice, no source: a person at the console reads one line, the log keeps the rest. */
    @Test
    void where_a_failure_arose_stands_in_the_file_and_not_on_the_console() {
        LogRecord record = new LogRecord(Level.SEVERE, "plan");
        record.setThrown(new IOException("No space left on device"));

        assertThat(new Logs.Lines(true).format(record)).contains("SEVERE plan", "\tat ");
        assertThat(new Logs.Lines(false).format(record))
                .contains("SEVERE plan")
                .doesNotContain("\tat ");
    }

    @Test
    void a_command_that_failed_is_told_once() {
        LogRecord failed = new LogRecord(Level.SEVERE, "plan");
        failed.setLoggerName(Logs.OF_COMMANDS);
        LogRecord other = new LogRecord(Level.SEVERE, "planning day");
        other.setLoggerName("underhook");

        assertThat(Logs.isForConsole(failed)).isFalse();
        assertThat(Logs.isForConsole(other)).isTrue();
    }
}
