// SPDX-License-Identifier: Apache-2.0
#include "cautions/cautions.h"

#include <algorithm>
#include <array>

// The cautions as data. A caution is added here, its most general one first of its moment.

namespace truehang {

namespace {

constexpr std::array table{
    Caution{Hazard::heat, "any",
            "Keep the clearance that its maker asks for, follow local rules, and use a qualified person where the"
            " law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::heat, "US",
            "Keep 0.9 m clear of a space heater and 300 mm of a baseboard heater; others want the clearance that "
            "their maker asks for. Follow local rules, and use a qualified person where the law asks for one.",
            "NFPA (3 ft of a space heater); common practice, no source, for baseboards (12 in)", "check the edition",
            "2026-11-25"},
    Caution{Hazard::cord, "any",
            "Small children can be strangled by cords and loops. Choose one without a cord; else keep every cord "
            "and loop out of reach, check the standard that holds where it hangs, follow local rules, and use a "
            "qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::cord, "Australia",
            "No loose loop of 220 mm or more at or below 1600 mm from the floor, cleats at 1600 mm or higher, and"
            " a guide that holds 70 N for 10 s. Check the standard. Follow local rules, and use a qualified "
            "person where the law asks for one.",
            "Trade Practices (Consumer Product Safety Standard), corded internal window coverings", "2014",
            "2026-11-25"},
    Caution{Hazard::cord, "Canada",
            "A cord within reach at most 220 mm long and a loop at most 440 mm round, under a pull of 35 N. Check"
            " the regulation. Follow local rules, and use a qualified person where the law asks for one.",
            "Corded Window Coverings Regulations", "SOR/2019-97", "2026-11-25"},
    Caution{Hazard::cord, "US",
            "No free-hanging operating cord on what is made to order. Check the standard. Follow local rules, and"
            " use a qualified person where the law asks for one.",
            "ANSI/WCMA A100.1", "2022", "2026-11-25"},
    Caution{Hazard::cord, "Europe",
            "Cords, chains and their loops have lengths, heights and breakaway devices of their own: check the "
            "standard, whose methods may serve for draperies too. Follow local rules, and use a qualified person "
            "where the law asks for one.",
            "EN 13120, EN 16433, EN 16434", "check the edition", "2026-11-25"},
    Caution{Hazard::power, "any",
            "A motor on the mains, and its supply, is work for a qualified electrician. Keep a window that "
            "someone may have to leave by openable without power, and follow local rules.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::fire, "any",
            "Cloth in a public place, a workplace or lodgings may have to pass a fire test. Ask whoever runs it which, "
            "ask for the cloth’s certificate, follow local rules, and use a qualified person where the law asks for "
            "one.",
            "common practice, no source", "", "2026-11-26"},
    Caution{Hazard::fire, "US",
            "Curtains for public places are tested by method 1 up to 700 g/m², above it by method 2. Ask for the "
            "cloth’s certificate. Follow local rules, and use a qualified person where the law asks for one.",
            "NFPA 701", "check the edition", "2026-11-25"},
    Caution{Hazard::fire, "UK",
            "Contract work asks for type A or B in hotels, schools and offices and for type C in health care. Ask"
            " for the cloth’s certificate. Follow local rules, and use a qualified person where the law asks for "
            "one.",
            "BS 5867-2", "check the edition", "2026-11-25"},
    Caution{Hazard::drilling, "any",
            "Before drilling: old coatings and boards may hold asbestos and old paint lead; cables and pipes run "
            "in walls, most likely straight above, below and beside any switch or socket. Never cut a lintel. If "
            "in doubt stop, follow local rules, and use a qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::drilling, "UK",
            "A building from before 2000 may hold asbestos in coatings and boards: stop and have it surveyed. "
            "Lead paint was sold to the 1960s, a little to the 1980s. Cables are expected within 150 mm of "
            "ceilings and corners and straight above, below and beside any accessory; outside these zones a wall "
            "isn’t proven safe. Follow local rules, and use a qualified person where the law asks for one.",
            "BS 7671 for cables; common practice, no source, for the rest", "check the edition", "2026-11-25"},
    Caution{Hazard::drilling, "Australia",
            "A building from before 1990 is likely to hold asbestos, one from before 2004 may: stop and have it "
            "surveyed. Follow local rules, and use a qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::drilling, "US",
            "No year of building rules asbestos out: stop and have it surveyed. Paint from before 1978 may hold "
            "lead. Follow local rules, and use a qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::ladder, "any",
            "Ladder for short jobs only, 30 minutes at most, three points of contact, at most 10 kg in hand, on a"
            " floor that is level. Follow local rules, and use a qualified person where the law asks for one.",
            "guidance on ladders; value from memory, check the edition", "check the edition", "2026-11-25"},
    Caution{Hazard::load, "any",
            "No rating of pole, bracket and fixing is known until their makers say it: without it this load isn’t"
            " shown to hold. Follow local rules, and use a qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::lifting, "any",
            "Two people hang it: one carries, one guides, and neither takes more than 10 kg up a ladder. Follow "
            "local rules, and use a qualified person where the law asks for one.",
            "guidance on ladders; value from memory, check the edition", "check the edition", "2026-11-25"},
    Caution{Hazard::escape, "any",
            "A window that someone may have to leave by stays openable without tools. Trickle vents and radiators"
            " stay clear. Follow local rules, and use a qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
    Caution{Hazard::escape, "England",
            "An escape window opens 0.33 m² or more and 450 mm or more each way (one 450 wide is then 734 high), "
            "its sill at most 1100 mm above the floor. Follow local rules, and use a qualified person where the "
            "law asks for one.",
            "Approved Document B", "check the edition", "2026-11-25"},
    Caution{Hazard::escape, "US",
            "An escape window opens 5.7 ft² or more, 24 in high and 20 in wide, its sill at most 44 in above the "
            "floor. Follow local rules, and use a qualified person where the law asks for one.",
            "International Residential Code, R310", "check the edition", "2026-11-25"},
    Caution{Hazard::weights, "any",
            "No lead weights where small children are: steel or chain instead, and old lead ones that are found "
            "come out. Follow local rules, and use a qualified person where the law asks for one.",
            "common practice, no source", "", "2026-11-25"},
};

}  // namespace

std::span<const Caution> cautions() { return table; }

std::vector<Caution> cautions_at(Hazard hazard) {
    std::vector<Caution> due;
    std::ranges::copy_if(table, std::back_inserter(due), [&](const Caution& c) { return c.hazard == hazard; });
    return due;
}

}  // namespace truehang
