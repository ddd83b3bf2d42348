// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "announced.h"
#include "elevation_item.h"
#include "key_stop.h"
#include "marks_item.h"
#include "notebook.h"
#include "obstruction_placing.h"
#include "placing_item.h"
#include "press_item.h"
#include "signature_item.h"
#include "sun_item.h"
#include "taps_item.h"
#include "thread_item.h"

#include <QtQml/qqmlregistration.h>

// Everything that QML sees of C++, module `Truehang` 1.0. An item that is drawn is added here too. The program makes
// the view models and hands them over; QML makes none.

namespace truehang::qml {

namespace thread_mark_type {
Q_NAMESPACE
QML_FOREIGN_NAMESPACE(truehang::thread_mark)
QML_NAMED_ELEMENT(ThreadMark)
}  // namespace thread_mark_type

struct NotebookType {
    Q_GADGET
    QML_FOREIGN(truehang::Notebook)
    QML_NAMED_ELEMENT(Notebook)
    QML_UNCREATABLE("handed over by the program")
};

struct OpenVisitType {
    Q_GADGET
    QML_FOREIGN(truehang::OpenVisit)
    QML_NAMED_ELEMENT(OpenVisit)
    QML_UNCREATABLE("handed over by the program")
};

struct VisitModelType {
    Q_GADGET
    QML_FOREIGN(truehang::VisitModel)
    QML_NAMED_ELEMENT(VisitModel)
    QML_UNCREATABLE("handed over by the program")
};

struct FabricsModelType {
    Q_GADGET
    QML_FOREIGN(truehang::FabricsModel)
    QML_NAMED_ELEMENT(FabricsModel)
    QML_UNCREATABLE("handed over by the program")
};

struct WalkModelType {
    Q_GADGET
    QML_FOREIGN(truehang::WalkModel)
    QML_NAMED_ELEMENT(WalkModel)
    QML_UNCREATABLE("handed over by the program")
};

struct ListsModelType {
    Q_GADGET
    QML_FOREIGN(truehang::ListsModel)
    QML_NAMED_ELEMENT(ListsModel)
    QML_UNCREATABLE("handed over by the program")
};

struct RoomLightType {
    Q_GADGET
    QML_FOREIGN(truehang::RoomLight)
    QML_NAMED_ELEMENT(RoomLight)
    QML_UNCREATABLE("handed over by the program")
};

struct WalkAloudType {
    Q_GADGET
    QML_FOREIGN(truehang::WalkAloud)
    QML_NAMED_ELEMENT(WalkAloud)
    QML_UNCREATABLE("handed over by the program")
};

struct ObstructionsModelType {
    Q_GADGET
    QML_FOREIGN(truehang::ObstructionsModel)
    QML_NAMED_ELEMENT(ObstructionsModel)
    QML_UNCREATABLE("handed over by the program")
};

struct HangingModelType {
    Q_GADGET
    QML_FOREIGN(truehang::HangingModel)
    QML_NAMED_ELEMENT(HangingModel)
    QML_UNCREATABLE("handed over by the program")
};

struct FiguresModelType {
    Q_GADGET
    QML_FOREIGN(truehang::FiguresModel)
    QML_NAMED_ELEMENT(FiguresModel)
    QML_UNCREATABLE("handed over by the program")
};

struct ChoicesModelType {
    Q_GADGET
    QML_FOREIGN(truehang::ChoicesModel)
    QML_NAMED_ELEMENT(ChoicesModel)
    QML_UNCREATABLE("handed over by the program")
};

struct ClientModelType {
    Q_GADGET
    QML_FOREIGN(truehang::ClientModel)
    QML_NAMED_ELEMENT(ClientModel)
    QML_UNCREATABLE("handed over by the program")
};

struct AgreementModelType {
    Q_GADGET
    QML_FOREIGN(truehang::AgreementModel)
    QML_NAMED_ELEMENT(AgreementModel)
    QML_UNCREATABLE("handed over by the program")
};

struct PhotosModelType {
    Q_GADGET
    QML_FOREIGN(truehang::PhotosModel)
    QML_NAMED_ELEMENT(PhotosModel)
    QML_UNCREATABLE("handed over by the program")
};

struct SendModelType {
    Q_GADGET
    QML_FOREIGN(truehang::SendModel)
    QML_NAMED_ELEMENT(SendModel)
    QML_UNCREATABLE("handed over by the program")
};

struct SheetsModelType {
    Q_GADGET
    QML_FOREIGN(truehang::SheetsModel)
    QML_NAMED_ELEMENT(SheetsModel)
    QML_UNCREATABLE("handed over by the program")
};

struct LeavingModelType {
    Q_GADGET
    QML_FOREIGN(truehang::LeavingModel)
    QML_NAMED_ELEMENT(LeavingModel)
    QML_UNCREATABLE("handed over by the program")
};

struct TakenTwiceModelType {
    Q_GADGET
    QML_FOREIGN(truehang::TakenTwiceModel)
    QML_NAMED_ELEMENT(TakenTwiceModel)
    QML_UNCREATABLE("handed over by the program")
};

struct QuestionsModelType {
    Q_GADGET
    QML_FOREIGN(truehang::QuestionsModel)
    QML_NAMED_ELEMENT(QuestionsModel)
    QML_UNCREATABLE("handed over by the program")
};

struct VisitFileModelType {
    Q_GADGET
    QML_FOREIGN(truehang::VisitFileModel)
    QML_NAMED_ELEMENT(VisitFileModel)
    QML_UNCREATABLE("handed over by the program")
};

struct RulesModelType {
    Q_GADGET
    QML_FOREIGN(truehang::RulesModel)
    QML_NAMED_ELEMENT(RulesModel)
    QML_UNCREATABLE("handed over by the program")
};

struct PositionModelType {
    Q_GADGET
    QML_FOREIGN(truehang::PositionModel)
    QML_NAMED_ELEMENT(PositionModel)
    QML_UNCREATABLE("handed over by the program")
};

struct SettingsType {
    Q_GADGET
    QML_FOREIGN(truehang::Settings)
    QML_NAMED_ELEMENT(Settings)
    QML_UNCREATABLE("handed over by the program")
};

struct ShownRowsType {
    Q_GADGET
    QML_FOREIGN(truehang::ShownRows)
    QML_NAMED_ELEMENT(ShownRows)
    QML_UNCREATABLE("handed over by the program")
};

struct FieldFormType {
    Q_GADGET
    QML_FOREIGN(truehang::FieldForm)
    QML_NAMED_ELEMENT(FieldForm)
    QML_UNCREATABLE("handed over by the program")
};

struct ElevationItemType {
    Q_GADGET
    QML_FOREIGN(truehang::ElevationItem)
    QML_NAMED_ELEMENT(ElevationItem)
};

struct SignatureItemType {
    Q_GADGET
    QML_FOREIGN(truehang::SignatureItem)
    QML_NAMED_ELEMENT(SignatureItem)
};

struct AnnouncedType {
    Q_GADGET
    QML_FOREIGN(truehang::Announced)
    QML_NAMED_ELEMENT(Announced)
};

struct KeyStopType {
    Q_GADGET
    QML_FOREIGN(truehang::KeyStop)
    QML_NAMED_ELEMENT(KeyStop)
};

struct PressItemType {
    Q_GADGET
    QML_FOREIGN(truehang::PressItem)
    QML_NAMED_ELEMENT(PressItem)
};

struct PlacingItemType {
    Q_GADGET
    QML_FOREIGN(truehang::PlacingItem)
    QML_NAMED_ELEMENT(PlacingItem)
};

struct WallPhotoType {
    Q_GADGET
    QML_FOREIGN(truehang::WallPhoto)
    QML_NAMED_ELEMENT(WallPhoto)
    QML_UNCREATABLE("handed over by the program")
};

struct SunItemType {
    Q_GADGET
    QML_FOREIGN(truehang::SunItem)
    QML_NAMED_ELEMENT(SunItem)
};

struct OutlookModelType {
    Q_GADGET
    QML_FOREIGN(truehang::OutlookModel)
    QML_NAMED_ELEMENT(OutlookModel)
    QML_UNCREATABLE("handed over by the program")
};

struct BearingsModelType {
    Q_GADGET
    QML_FOREIGN(truehang::BearingsModel)
    QML_NAMED_ELEMENT(BearingsModel)
    QML_UNCREATABLE("handed over by the program")
};

struct SkylineModelType {
    Q_GADGET
    QML_FOREIGN(truehang::SkylineModel)
    QML_NAMED_ELEMENT(SkylineModel)
    QML_UNCREATABLE("handed over by the program")
};

struct ObstructionPlacingType {
    Q_GADGET
    QML_FOREIGN(truehang::ObstructionPlacing)
    QML_NAMED_ELEMENT(ObstructionPlacing)
    QML_UNCREATABLE("handed over by the program")
};

struct MarksItemType {
    Q_GADGET
    QML_FOREIGN(truehang::MarksItem)
    QML_NAMED_ELEMENT(MarksItem)
};

struct MarksModelType {
    Q_GADGET
    QML_FOREIGN(truehang::MarksModel)
    QML_NAMED_ELEMENT(MarksModel)
    QML_UNCREATABLE("handed over by the program")
};

struct PhotoTapeModelType {
    Q_GADGET
    QML_FOREIGN(truehang::PhotoTapeModel)
    QML_NAMED_ELEMENT(PhotoTapeModel)
    QML_UNCREATABLE("handed over by the program")
};

struct TapsItemType {
    Q_GADGET
    QML_FOREIGN(truehang::TapsItem)
    QML_NAMED_ELEMENT(TapsItem)
};

struct ThreadItemType {
    Q_GADGET
    QML_FOREIGN(truehang::ThreadItem)
    QML_NAMED_ELEMENT(ThreadItem)
};

}  // namespace truehang::qml
