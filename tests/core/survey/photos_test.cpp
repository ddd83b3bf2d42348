// SPDX-License-Identifier: Apache-2.0
#include "survey/photos.h"

#include <gtest/gtest.h>

// What follows is worked out from what is said in survey/photos.h; the survey is invented.

namespace truehang {
namespace {

Photo photo(const std::string& sha256, const std::string& obstruction = {}) {
    Photo made;
    made.sha256 = sha256;
    made.obstruction = obstruction;
    return made;
}

/// Two rooms; the first with two windows, a radiator before its first, a photo of each and one of the room.
Survey house() {
    Survey survey;
    Window south;
    south.id = "south";
    Obstruction radiator;
    radiator.id = "radiator";
    south.obstructions = {radiator};
    south.photos = {photo("of-south"), photo("of-radiator", "radiator"), photo("of-gone", "taken out")};
    Window west;
    west.id = "west";
    Room parlour;
    parlour.id = "parlour";
    parlour.photos = {photo("of-parlour")};
    parlour.windows = {south, west};
    Room loft;
    loft.id = "loft";
    loft.photos = {photo("of-loft")};
    survey.rooms = {parlour, loft};
    return survey;
}

std::vector<std::string> digests(const std::vector<PhotoPlace>& places) {
    std::vector<std::string> all;
    for (const PhotoPlace& place : places) {
        all.push_back(place.photo->sha256);
    }
    return all;
}

using Digests = std::vector<std::string>;

TEST(Photos, AreFoundOfEveryRoomAndWindow) {
    EXPECT_EQ(digests(photos_in(house())), Digests({"of-parlour", "of-south", "of-radiator", "of-gone", "of-loft"}));
}

TEST(Photos, AWindowShowsItsOwnAndItsRooms) {
    EXPECT_EQ(digests(photos_with(house(), "south")), Digests({"of-south", "of-radiator", "of-gone", "of-parlour"}));
    EXPECT_EQ(digests(photos_with(house(), "west")), Digests({"of-parlour"}));
    EXPECT_TRUE(photos_with(house(), "nowhere").empty());
}

TEST(Photos, OneThatIsBothTheWindowsAndTheRoomsShowsOnce) {
    Survey survey = house();
    survey.rooms[0].photos.push_back(photo("of-south"));
    EXPECT_EQ(digests(photos_with(survey, "south")), Digests({"of-south", "of-radiator", "of-gone", "of-parlour"}));
}

TEST(Photos, AreOfWhatIsThere) {
    const Survey survey = house();
    const auto places = photos_with(survey, "south");
    EXPECT_EQ(shown_by(places[0]), (PhotoOf{false, ""}));
    EXPECT_EQ(shown_by(places[1]), (PhotoOf{false, "radiator"}));
    EXPECT_EQ(shown_by(places[2]), (PhotoOf{false, ""}));  // its obstruction was taken out
    EXPECT_EQ(shown_by(places[3]), (PhotoOf{true, ""}));
}

TEST(Photos, AreGivenToTheRoomAndBackWithAllThatTheyCarry) {
    Survey survey = house();
    survey.rooms[0].windows[0].photos[1].caption = "valve";
    EXPECT_TRUE(give_photo(survey, "south", "of-radiator", {true, ""}));
    EXPECT_EQ(digests(photos_with(survey, "west")), Digests({"of-parlour", "of-radiator"}));
    EXPECT_EQ(photo_with(survey, "west", "of-radiator")->caption, "valve");
    EXPECT_TRUE(give_photo(survey, "south", "of-radiator", {false, "radiator"}));
    EXPECT_EQ(digests(photos_with(survey, "west")), Digests({"of-parlour"}));
    EXPECT_EQ(photo_with(survey, "south", "of-radiator")->obstruction, "radiator");
    EXPECT_EQ(photo_with(survey, "south", "of-radiator")->caption, "valve");
}

TEST(Photos, ArentGivenToWhatIsntThere) {
    Survey survey = house();
    EXPECT_FALSE(give_photo(survey, "south", "of-south", {false, "beam"}));
    EXPECT_FALSE(give_photo(survey, "west", "of-south", {true, ""}));
    EXPECT_FALSE(give_photo(survey, "west", "of-parlour", {false, "radiator"}));  // of another window
    EXPECT_FALSE(give_photo(survey, "south", "of-south", {false, ""}));           // it is so already
    EXPECT_EQ(digests(photos_in(survey)), digests(photos_in(house())));
}

TEST(Photos, ComeInOnceAndGoOff) {
    Survey survey = house();
    EXPECT_FALSE(add_photo(survey, "south", photo("of-parlour"), {false, ""}));
    EXPECT_FALSE(add_photo(survey, "nowhere", photo("new"), {true, ""}));
    EXPECT_TRUE(add_photo(survey, "west", photo("new"), {true, ""}));
    EXPECT_NE(photo_with(survey, "south", "new"), nullptr);
    EXPECT_TRUE(add_photo(survey, "south", photo("hot"), {false, "radiator"}));
    EXPECT_EQ(photo_with(survey, "south", "hot")->obstruction, "radiator");
    EXPECT_TRUE(add_photo(survey, "west", photo("hot too"), {false, "radiator"}));  // that stands at another window
    EXPECT_EQ(photo_with(survey, "west", "hot too")->obstruction, "");
    EXPECT_TRUE(take_photo_off(survey, "south", "new"));
    EXPECT_EQ(photo_with(survey, "west", "new"), nullptr);
    EXPECT_FALSE(take_photo_off(survey, "south", "new"));
}

}  // namespace
}  // namespace truehang
