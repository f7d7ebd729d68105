package annulus.cli;

/** The words of {@code help}. */
final class Help {
  private Help() {}

  static String text() {
    return """
        annulus: fit a part in a bore, choose dry, film or retaining compound, and know when it is safe.

        java -jar annulus.jar advise ORDER.json [--why] [--json] [--card FILE.html]
            one joint: what to use, earliest safe hand-back, gap, cure, steps, cautions
        java -jar annulus.jar advise --bore 42.04 --part 41.98 --engagement 11
                --materials steel-plain,steel-bearing --temp 18 [more]
            the same from a few words; what is not said is assumed and shown
        java -jar annulus.jar advise --batch JOBS.csv --out RESULTS.csv
            many joints; a bad row is reported with its place, the others are answered
        java -jar annulus.jar promise ORDER.json --shop SHOP.json [--options] [--wanted TIME]
                [--now TIME] [--ics FILE.ics] [--tag FILE.html] [--picture FILE.svg] [--json]
            what to tell the customer, what would move it, other ways and their latest starts
        java -jar annulus.jar promise ORDER.json --shop SHOP.json --log FILE.csv --now TIME
                [--date-order day-first or month-first] [--unit C or F] [--column NAME]
            a running job judged again by its temperature logger
        java -jar annulus.jar promise --list JOBS.csv --shop SHOP.json [--now TIME] [--log FILE.csv]
            every job's stage now and ready time; those that miss column "promised" first;
            with the log of a cold night, whom to call
        java -jar annulus.jar learn OBSERVATIONS.csv [--out DIR]
            what the shop saw of its own joints, as tables for --data DIR

        java -jar annulus.jar sources ORDER.json [--data DIR]
            every number behind the answer, with its source and confidence

        java -jar annulus.jar fit "35 H7" "35 k6" [--bore MM --part MM --instrument BORE,PART]
                [--materials BORE,PART] [--measured-at C] [--picture FILE.svg]
            what a designation allows, and whether measured sizes keep it; also "40 H7/s6",
            "bearing outside 62", "bearing bore 25"

        java -jar annulus.jar stock check STOCK.csv [--on DAY] [--within DAYS] [--ledger FILE] [--json]
            what may be used, what expires soon, what must not be used and why
        java -jar annulus.jar stock plan STOCK.csv --jobs JOBS.csv [--ledger FILE] [--on DAY]
            lots for jobs, first expired first out; what is short; what to order and when
        java -jar annulus.jar stock cover STOCK.csv [--picture FILE.svg]
            which joints the cabinet serves; the fewest classes that close its holes
        java -jar annulus.jar stock receive, use, discard or correct --ledger FILE --lot LOT --ml ML
                --who NAME [--job REF] [--class ID] [--stock STOCK.csv] [--reason TEXT]
                [--witness TEXT] [--movement ID] [--on DAY]
            one movement into the ledger; receive --from STOCK.csv opens it with the sheet's amounts;
            correct --counted ML says what was found instead of the change
        java -jar annulus.jar stock hold-back --ledger FILE --lot LOT --who NAME --reason TEXT
                [--stock STOCK.csv] [--on DAY] [--movement ID]
            a lot that must not be used: recalled by its maker, seen frozen, seal broken, in doubt;
            names the jobs that got it. In a sheet: columns held_back (why) and held_back_on (day)
        java -jar annulus.jar stock clear --ledger FILE --lot LOT --who NAME --reason TEXT
                [--stock STOCK.csv] [--on DAY] [--movement ID of what holds it back]
            it may be used again, as far as its dates allow
        java -jar annulus.jar stock take-back --ledger FILE --movement ID --who NAME [--reason TEXT]
            the last use, discard or correction of its lot did not take place: a lot that it would
            have opened is sealed
        java -jar annulus.jar stock recall --ledger FILE --lot LOT or --job REF
            which jobs got a lot; which lots went into a job
        java -jar annulus.jar stock import --ledger FILE --from OTHER-LEDGER
        java -jar annulus.jar stock export STOCK.csv --ledger FILE --out NEW.csv
        java -jar annulus.jar stock label --data DIR [--from LABELS.csv] [--picture FILE.svg]
            what a lot's own label says becomes a class of the shop; without a file it asks
        java -jar annulus.jar stock tag STOCK.csv --lot LOT [--out FILE.html]
            a label for a container, from the shop's own text

        java -jar annulus.jar serve [--port 7407] [--listen 127.0.0.1] [--database JDBC-URL]
                [--shop SHOP.json] [--stock STOCK.csv] [--passcode-file FILE] [--address URL]
            the board in a browser: bench, counter, cabinet; other machines need the passcode;
            the database is jdbc:sqlite:annulus.db if not said, or jdbc:postgresql://HOST/NAME?user=U
        java -jar annulus.jar backup FILE [--database JDBC-URL]
        java -jar annulus.jar restore FILE [--database JDBC-URL]
            copies of a SQLite database: taken while it is served, put back while it is not
        java -jar annulus.jar help
            this page, also -h and --help; --version says which annulus it is

        Words for one joint (mm, °C, 24 h clock; inch and °F with their unit: "1.652 in", "64 F"):
          --bore MM --part MM          diameters; several readings as "42.04 42.05"
          --part-bearing MM --bore-bearing MM
                                       a bearing nobody measured: class Normal tolerance is taken
          --engagement MM              length the two share
          --materials BORE,PART        --finish BORE,PART   --state BORE,PART
          --instrument BORE,PART       --measured-at C
          --bore-outside MM            --part-inside MM
          --radial-gap-um UM --radial-gap-plus-minus-um UM --diameter MM
          --diametral-clearance-um UM --diametral-clearance-plus-minus-um UM --diameter MM
                                       the gap itself instead of two diameters
          --temp C --temp-plus-minus C where it cures
          --primer ID or none          --primer-on both, bore or part  --primer-minutes MIN
          --service-low C --service-high C
          --axial-n N --torque-nm NM   load; --load-repeats static, light-repeated, reversing or shock
          --duty ID                    usual load of a usual joint, such as bottom-bracket-cup
          --consequence nuisance, stranding or injury (if not said: injury)
          --stock STOCK.csv --ledger FILE
                                       prefer what the cabinet has in date, and say what it costs
          --comes-apart-later --seal-near --electronics-near --warranty
          --start 2026-11-25T15:30 --zone Europe/Dublin --moved-at TIME
          --class ID --confidence 0.95 --job REF --title TEXT

        For every command:
          --data DIR                   a shop's own tables laid over those of the program
        Exit code: 0 answered; 1 answered, and the answer is no; 2 bad input; 3 own fault.
        """;
  }
}
